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
