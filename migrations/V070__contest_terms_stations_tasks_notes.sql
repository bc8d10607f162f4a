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
  protest_minutes int
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
  scale_reads_typed varchar(40)
);
create table contest_model_note (
  id varchar(80) primary key,
  model_id varchar(80) not null,
  kind varchar(10) not null,
  at_ms bigint not null,
  note varchar(400) not null,
  ready_at_ms bigint
);
alter table contest_model add column motors int;
alter table contest_crew add column clean_winds int;
