-- The projection's own book-keeping: which acts are in it, and how far along the journal it is.
create table act (
  id varchar(64) primary key,
  sum varchar(64) not null,
  n bigint not null
);
create table position (
  only_row int primary key check (only_row = 1),
  n bigint not null,
  hash varchar(64) not null
);
-- People whose names were erased: taken out of people.json again at every start, whatever happened in between.
create table erased_person (
  person_id varchar(120) primary key,
  at_ms bigint not null
);
