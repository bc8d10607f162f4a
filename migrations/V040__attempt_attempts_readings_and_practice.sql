-- Attempts, who times them, their readings, and flights outside any attempt.
create table attempt (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  entry_id varchar(80) not null,
  number int not null,
  model_id varchar(80),
  motor_id varchar(80),
  state varchar(10) not null,
  called_at_ms bigint,
  winding_at_ms bigint,
  holding_at_ms bigint,
  released_at_ms bigint,
  landed_at_ms bigint,
  closed_at_ms bigint,
  stop_count_crank_turns int,
  launch_torque_nmm double precision,
  launch_torque_typed varchar(40),
  official_ms bigint,
  void_reason varchar(400),
  how varchar(1000),
  unique (entry_id, number)
);
create table attempt_watch (
  attempt_id varchar(80) not null,
  slot int not null,
  device varchar(80) not null,
  person_id varchar(80),
  primary key (attempt_id, slot)
);
create table attempt_reading (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  slot int not null,
  instrument varchar(10) not null,
  person_id varchar(80),
  duration_ms bigint not null
);
create index attempt_reading_of on attempt_reading (attempt_id, slot);
create table practice_flight (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  model_id varchar(80),
  motor_id varchar(80) not null,
  flown_at_ms bigint not null,
  crank_turns int,
  winder_ratio double precision not null,
  stop_torque_nmm double precision,
  stop_torque_typed varchar(40),
  launch_torque_nmm double precision,
  launch_torque_typed varchar(40),
  back_off_crank_turns double precision,
  duration_ms bigint not null,
  remaining_crank_turns double precision,
  note varchar(400),
  valid boolean not null,
  invalid_reason varchar(400)
);
