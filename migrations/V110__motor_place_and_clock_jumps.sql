-- The order by hand on the Bench, and jumps of the laptop's clock with the waits that ran through them.
create table motor_place (
  motor_id varchar(80) primary key,
  place bigint not null
);
create table motor_clock_jump (
  id varchar(80) primary key,
  at_ms bigint not null,
  by_ms bigint not null,
  slept boolean
);
create table motor_shift (
  motor_id varchar(80) not null,
  jump_id varchar(80) not null,
  by_ms bigint not null,
  primary key (motor_id, jump_id)
);
