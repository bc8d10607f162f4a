-- What a timekeeper saw or did beside release and landing, and landings that were a mistake.
create table attempt_watch_mark (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  slot int not null,
  what varchar(20) not null,
  ms bigint,
  about varchar(80),
  at_ms bigint not null,
  bound_ms bigint,
  person_id varchar(80)
);
create index attempt_watch_mark_of on attempt_watch_mark (attempt_id, slot);
alter table attempt_reading add column taken_back boolean default false not null;
