-- Lists in their revisions, as rows of a file; walks through them; what let winding start; cautions that were read.
create table steps_row (
  list_id varchar(80) not null,
  revision int not null,
  place int not null,
  title varchar(200) not null,
  moment varchar(40) not null,
  way varchar(40) not null,
  aloud boolean not null,
  ending varchar(400) not null,
  item varchar(80) not null,
  words varchar(200) not null,
  reason varchar(400) not null,
  critical boolean not null,
  answer varchar(40) not null,
  primary key (list_id, revision, place)
);
create table steps_run (
  id varchar(250) primary key,
  list_id varchar(80) not null,
  revision int not null,
  subject_id varchar(165) not null,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null,
  -- Of a list of the winding place: which one; of the day's list of before the one that was at work when it was begun.
  station_id varchar(80)
);
create table steps_fact (
  id varchar(80) primary key,
  run_id varchar(250) not null,
  kind varchar(20) not null,
  step_id varchar(80),
  about varchar(80),
  answer varchar(200),
  done boolean,
  reason varchar(2000),
  revision int,
  at_ms bigint not null,
  person_id varchar(80),
  device varchar(80) not null
);
create index steps_fact_of on steps_fact (run_id);
create table steps_gate (
  id varchar(80) primary key,
  subject_id varchar(165) not null,
  adult_id varchar(80) not null,
  reason varchar(400) not null,
  steps varchar(4000) not null,
  at_ms bigint not null,
  device varchar(80) not null,
  station_id varchar(80)
);
create index steps_gate_of on steps_gate (subject_id);
create table steps_met (
  person_id varchar(80) not null,
  met_day varchar(10) not null,
  caution_id varchar(80) not null,
  at_ms bigint not null,
  primary key (person_id, met_day, caution_id)
);
