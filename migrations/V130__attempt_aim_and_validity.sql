-- The launch torque that is wanted, and whether a flight may enter averages, fits and forecasts.
create table attempt_aim (
  attempt_id varchar(80) primary key,
  launch_nmm double precision not null,
  launch_typed varchar(40) not null
);
create table attempt_judged (
  attempt_id varchar(80) primary key,
  reason varchar(400) not null,
  contact_ms bigint
);
