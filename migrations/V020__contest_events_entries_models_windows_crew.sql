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
  mass_typed varchar(40)
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
  primary key (person_id, event_id)
);
