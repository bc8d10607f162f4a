-- Winds as they were tapped and counted.
create table winding_wind (
  id varchar(80) primary key,
  attempt_id varchar(80),
  motor_id varchar(80) not null,
  station_id varchar(80),
  meter varchar(60),
  ratio double precision not null,
  division_nmm double precision,
  full_scale_nmm double precision,
  target_crank_turns int,
  at_full_crank_turns int,
  back_off_crank_turns int not null,
  ceiling_nmm double precision,
  stop varchar(10) not null,
  use int not null,
  device varchar(80) not null,
  person_id varchar(80),
  at_ms bigint not null,
  paced boolean not null
);
create index winding_wind_of on winding_wind (motor_id, at_ms);
create table winding_mark (
  id varchar(80) primary key,
  wind_id varchar(80) not null,
  step int not null,
  elapsed_ms bigint not null,
  at_ms bigint not null,
  left_out boolean not null,
  set_to int
);
create index winding_mark_of on winding_mark (wind_id);
create table winding_phase (
  id varchar(80) primary key,
  wind_id varchar(80) not null,
  phase varchar(20) not null,
  elapsed_ms bigint not null,
  at_ms bigint not null
);
create index winding_phase_of on winding_phase (wind_id);
create table winding_counted (
  wind_id varchar(80) primary key,
  at_full_crank_turns int,
  stop_crank_turns int not null,
  back_off_crank_turns double precision,
  paced boolean not null
);
-- The metronome that a practice wind was begun with.
create table winding_paced (
  wind_id varchar(80) primary key,
  crank_turns_per_minute int not null
);
-- Doubtful readings of which somebody said that they were so.
create table winding_confirmed (
  mark_id varchar(80) primary key,
  wind_id varchar(80) not null
);
-- Winds that a person left out of averages and fits, with the reason; none where it was taken in again.
create table winding_judged (
  wind_id varchar(80) primary key,
  reason varchar(400),
  person_id varchar(80),
  at_ms bigint not null
);
-- Marks of tape at which the winder was seen.
create table winding_floor_mark (
  id varchar(80) primary key,
  wind_id varchar(80) not null,
  number int not null,
  elapsed_ms bigint not null,
  at_ms bigint not null,
  device varchar(80) not null
);
create index winding_floor_mark_of on winding_floor_mark (wind_id);
-- Taps that were slips of the hand: their rows are gone. Of a wind itself, its first crank turn.
create table winding_undone (
  tap_id varchar(80) primary key,
  wind_id varchar(80) not null,
  at_ms bigint not null,
  device varchar(80) not null
);
create index winding_undone_of on winding_undone (wind_id);
-- Who was named for winding when a wind began: whoever is named later has not wound it.
create table winding_winder (
  wind_id varchar(80) primary key,
  person_id varchar(80) not null
);

-- What was typed of a hold: torque at so many seconds, with the step in which it was read.
create table winding_held (
  wind_id varchar(80) not null,
  seconds double precision not null,
  torque_nmm double precision not null,
  resolution_nmm double precision not null,
  typed varchar(60) not null
);
create index winding_held_of on winding_held (wind_id);
