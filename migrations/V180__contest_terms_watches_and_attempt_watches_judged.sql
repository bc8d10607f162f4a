-- When watches become a time by themselves, and what the captain decided of a watch: each word is kept, the last holds.
alter table contest_terms add column spread_ms bigint;
alter table contest_terms add column if_one varchar(10);
create table attempt_watch_judged (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  slot int not null,
  verdict varchar(10) not null,
  reason varchar(400) not null,
  person_id varchar(80),
  at_ms bigint not null
);
