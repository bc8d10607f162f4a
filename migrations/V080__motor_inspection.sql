-- The mass as inspected, with rings and lubricant, and where the motor is: with the team or handed in.
create table motor_inspection (
  motor_id varchar(80) primary key,
  mass_g double precision,
  mass_typed varchar(40),
  place varchar(10) not null,
  at_ms bigint
);
