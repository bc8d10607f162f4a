-- Days, who takes part with what, when they may fly, and who helps. Columns follow the fact records one to one.
create table contest_event (
  id varchar(80) primary key,
  name varchar(120) not null unique,
  kind varchar(10) not null,
  "DAY" varchar(10) not null,
  hall varchar(120),
  ceiling_mm double precision,
  ceiling_typed varchar(40),
  attempts int not null,
  window_minutes int not null,
  score varchar(10) not null,
  best_of int not null,
  timekeepers int not null,
  take varchar(10) not null,
  if_two varchar(10) not null,
  round_to_ms bigint not null,
  rounding varchar(10) not null,
  round_watches_first boolean not null,
  minimum_ms bigint not null,
  winder_ratio double precision not null,
  lane_mm double precision,
  lane_typed varchar(40)
);
create table contest_entry (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  name varchar(120) not null,
  team varchar(120) not null,
  division varchar(60),
  own boolean not null,
  call_order int,
  unique (event_id, name)
);
create table contest_model (
  id varchar(80) primary key,
  name varchar(120) not null unique,
  team varchar(120) not null,
  direction varchar(3) not null,
  hook_distance_mm double precision not null,
  hook_distance_typed varchar(40) not null,
  mass_g double precision,
  mass_typed varchar(40),
  motors int
);
create table contest_entry_model (
  entry_id varchar(80) not null,
  model_id varchar(80) not null,
  primary key (entry_id, model_id)
);
create table contest_window (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  entry_id varchar(80),
  opens_at_ms bigint not null,
  closes_at_ms bigint not null
);
create index contest_window_opens on contest_window (event_id, opens_at_ms);
create table contest_crew (
  person_id varchar(80) not null,
  event_id varchar(80) not null,
  roles varchar(80) not null,
  clean_winds int,
  -- Whose entries this person does not time when the team hosts.
  team varchar(120),
  primary key (person_id, event_id)
);
-- What an event asks beside its rules; who does what for an entry with which motors; the winding places; notes on models.
create table contest_terms (
  event_id varchar(80) primary key,
  devices varchar(10) not null,
  outside_help varchar(10) not null,
  motor_limit_g double precision,
  motor_limit_typed varchar(40),
  model_least_g double precision,
  model_least_typed varchar(40),
  declared_motors int,
  reinspection boolean not null,
  log_flights int not null,
  log_columns varchar(200) not null,
  log_signed_by varchar(120),
  sections varchar(400),
  protest_minutes int,
  -- When watches become a time by themselves.
  spread_ms bigint,
  if_one varchar(10),
  -- Until when motors are handed in; empty where they stay with the team.
  hand_in_at_ms bigint
);
create table contest_entry_motor (
  entry_id varchar(80) not null,
  motor_id varchar(80) not null,
  primary key (entry_id, motor_id)
);
create table contest_entry_task (
  entry_id varchar(80) not null,
  task varchar(20) not null,
  person_id varchar(80) not null,
  primary key (entry_id, task)
);
create table contest_station (
  id varchar(80) primary key,
  name varchar(120) not null unique,
  mount varchar(10) not null,
  pull_test_n double precision,
  pull_tested varchar(10),
  winder_ratio double precision,
  ratio_checked varchar(10),
  counter varchar(10) not null,
  counts_back boolean not null,
  meter varchar(60),
  zero_nmm double precision,
  zero_typed varchar(40),
  span varchar(200),
  calibrated varchar(10),
  known_mass_g double precision,
  known_mass_typed varchar(40),
  scale_reads_g double precision,
  scale_reads_typed varchar(40),
  -- What one mark of the torque meter is worth, and where its scale ends.
  division_nmm double precision,
  division_typed varchar(40),
  full_scale_nmm double precision,
  full_scale_typed varchar(40),
  -- Which way its hook turns for the crank, and who saw it when.
  output_turns varchar(10),
  output_checked varchar(10),
  output_checked_by varchar(80)
);
create table contest_model_note (
  id varchar(80) primary key,
  model_id varchar(80) not null,
  kind varchar(10) not null,
  at_ms bigint not null,
  note varchar(400) not null,
  ready_at_ms bigint
);
-- Which flights are official, what becomes of contacts and collisions, how ties are parted.
create table contest_flight_rules (
  event_id varchar(80) primary key,
  held_watched_ms bigint,
  held_deduct_ms bigint,
  repeats_per_flight int not null,
  repeats_in_all int,
  if_short varchar(10) not null,
  collision varchar(10) not null,
  collision_ms bigint not null,
  if_silent varchar(10) not null,
  ties varchar(10) not null,
  drop_best int not null,
  drop_worst int not null,
  last_call_ms bigint not null,
  inside varchar(10) not null,
  -- What becomes of a flight whose model is caught; null where an earlier program wrote the rules.
  if_caught varchar(10),
  start_again varchar(10),
  -- Whether means are ordered exactly or as they are shown; null where an earlier program wrote the rules.
  mean_ranks varchar(10)
);
-- The event that people work on, once somebody has said so. One row, none before.
create table contest_at_hand (
  id integer primary key,
  event_id varchar(80) not null
);

-- In what the team writes lengths: one row, once somebody has chosen.
create table contest_units (
  id integer primary key,
  units varchar(10) not null
);
-- Rules that were changed after a flight was official: why, what was changed, which times and places it moved.
create table contest_rules_changed (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  at_ms bigint not null,
  person_id varchar(80),
  reason varchar(400) not null,
  changed varchar(1000) not null,
  moved varchar(2000) not null
);
-- Windows that were moved after a flight was official, with the reason.
create table contest_window_moved (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  entry_id varchar(80),
  at_ms bigint not null,
  person_id varchar(80),
  reason varchar(400) not null,
  opens_before_ms bigint not null,
  closes_before_ms bigint not null,
  opens_at_ms bigint not null,
  closes_at_ms bigint not null
);
