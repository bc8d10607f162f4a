-- Winding places as measured by tape, several halls kept; the one that is in use.
create table hall_place (
  id varchar(80) primary key,
  hall varchar(120) not null,
  lane varchar(80) not null,
  lane_mm double precision not null,
  lane_typed varchar(40) not null,
  past_mm double precision,
  past_typed varchar(40),
  drift_hour int,
  drift_mps double precision,
  at_ms bigint not null,
  person_id varchar(80)
);
create table hall_thing (
  place_id varchar(80) not null,
  row_no int not null,
  kind varchar(20) not null,
  name varchar(80) not null,
  how varchar(20) not null,
  first_mm double precision not null,
  first_typed varchar(40) not null,
  second_mm double precision not null,
  second_typed varchar(40) not null,
  side varchar(10) not null,
  blows_hour int,
  primary key (place_id, row_no)
);
create table hall_in_use (
  one int primary key,
  place_id varchar(80) not null,
  since_ms bigint not null
);
-- A hall as it was found, the distances that are kept there, and its air as it was measured.
create table hall_described (
  hall varchar(120) primary key,
  ceiling_mm double precision,
  ceiling_typed varchar(40),
  note varchar(400) not null,
  at_ms bigint not null,
  person_id varchar(80)
);
create table hall_obstruction (
  hall varchar(120) not null,
  row_no int not null,
  name varchar(80) not null,
  height_mm double precision not null,
  height_typed varchar(40) not null,
  primary key (hall, row_no)
);
create table hall_distance (
  hall varchar(120) not null,
  word varchar(20) not null,
  mm double precision not null,
  typed varchar(40) not null,
  primary key (hall, word)
);
create table hall_air (
  id varchar(80) primary key,
  hall varchar(120) not null,
  celsius double precision,
  humidity double precision,
  at_ms bigint not null,
  person_id varchar(80)
);
create index hall_air_at on hall_air (at_ms);
