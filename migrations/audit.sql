-- What an official may want to know of how rules, windows, entries, rights and results came to be: made of the journal's
-- lines as they are applied, so that nothing is changed without standing here. said: the fields that are told, as JSON.
create table audit_row (
  n bigint not null,
  place int not null,
  at_ms bigint not null,
  device varchar(80) not null,
  person_id varchar(80) not null,
  brought_by varchar(80),
  kind varchar(60) not null,
  said varchar(8000) not null,
  primary key (n, place)
);
