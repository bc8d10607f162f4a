-- Lots of strip and the loops tied from them. What was typed stands beside what it came to.
create table motor_batch (
  id varchar(80) primary key,
  name varchar(120) not null unique,
  width_mm double precision,
  width_typed varchar(40),
  thickness_mm double precision,
  thickness_typed varchar(40),
  k_inch_gram double precision,
  opened_day varchar(10)
);
create table motor (
  id varchar(80) primary key,
  tag varchar(40) not null unique,
  batch_id varchar(80) not null,
  team varchar(120) not null,
  direction varchar(3) not null,
  loop_mm double precision not null,
  loop_typed varchar(40) not null,
  mass_g double precision not null,
  mass_typed varchar(40) not null,
  breaking_turns int,
  uses int not null
);
create index motor_of_batch on motor (batch_id);
-- The mass as inspected, with rings and lubricant, and where the motor is: with the team or handed in.
create table motor_inspection (
  motor_id varchar(80) primary key,
  mass_g double precision,
  mass_typed varchar(40),
  place varchar(10) not null,
  at_ms bigint
);
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
  -- Where it parted, as far as somebody looked.
  parted varchar(10),
  -- Whether the coach said that it was a break test.
  test boolean,
  undone boolean default false not null
);
create index motor_step_of on motor_step (motor_id, at_ms);
-- Breaks that were none after all, with the reason: the step itself is undone.
create table motor_break_mistaken (
  id varchar(80) primary key,
  motor_id varchar(80) not null,
  reason varchar(400) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null
);
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
