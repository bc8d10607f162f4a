-- What people say after a motor parted or was run back, and who moved an attempt last.
create table attempt_people_safe (
  attempt_id varchar(80) not null,
  motor_id varchar(80) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null,
  primary key (attempt_id, motor_id)
);
create table attempt_parted (
  attempt_id varchar(80) not null,
  motor_id varchar(80) not null,
  place varchar(10) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null,
  primary key (attempt_id, motor_id)
);
create table attempt_run_back (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  motor_id varchar(80) not null,
  wind_id varchar(80),
  crank_turns double precision not null,
  use boolean not null,
  state varchar(10) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null
);
create index attempt_run_back_of on attempt_run_back (attempt_id, at_ms);
-- The last act that moved an attempt.
create table attempt_last_act (
  attempt_id varchar(80) primary key,
  phase varchar(12) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null
);
-- Given up while its motor was wound, until somebody says how many turns were on.
alter table attempt add column turns_on boolean default false not null;
-- Where it parted, as far as somebody looked.
alter table motor_step add column parted varchar(10);
