-- What was done to each motor, which of it stands now, and how long lubricant, hold and rest are to last.
create table motor_step (
  id varchar(80) primary key,
  motor_id varchar(80) not null,
  deed varchar(20) not null,
  stage varchar(20) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null,
  wait_name varchar(20),
  minimum_s int,
  preferred_s int,
  maximum_s int,
  required boolean not null,
  waited_ms bigint,
  reason varchar(400),
  motor_turns double precision,
  torque_nmm double precision,
  torque_typed varchar(40),
  meter varchar(60),
  before_id varchar(80),
  undone boolean default false not null
);
create index motor_step_of on motor_step (motor_id, at_ms);
create table motor_now (
  motor_id varchar(80) primary key,
  step_id varchar(80) not null
);
create table motor_wait (
  name varchar(20) primary key,
  minimum_s int not null,
  preferred_s int not null,
  maximum_s int,
  required boolean not null
);
