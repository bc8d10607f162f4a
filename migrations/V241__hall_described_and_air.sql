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
