-- What is wanted of an attempt's wind, and whether its flight says something of model and motor.
create table attempt_aim (
  attempt_id varchar(80) primary key,
  launch_nmm double precision,
  launch_typed varchar(40),
  ceiling_nmm double precision,
  ceiling_typed varchar(40)
);
create table attempt_judged (
  attempt_id varchar(80) primary key,
  reason varchar(400),
  contact_ms bigint
);
