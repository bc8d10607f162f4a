-- People whose names were erased: taken out of people.json again at every start, whatever happened in between.
create table erased_person (
  person_id varchar(120) primary key,
  at_ms bigint not null
);
