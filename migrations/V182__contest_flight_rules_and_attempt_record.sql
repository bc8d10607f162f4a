-- Which flights are official, what becomes of contacts and collisions, how ties are parted.
create table contest_flight_rules (
  event_id varchar(80) primary key,
  held_watched_ms bigint,
  held_deduct_ms bigint,
  repeats_per_flight int not null,
  repeats_in_all int,
  if_short varchar(10) not null,
  collision varchar(10) not null,
  collision_ms bigint not null,
  if_silent varchar(10) not null,
  ties varchar(10) not null,
  drop_best int not null,
  drop_worst int not null,
  last_call_ms bigint not null,
  inside varchar(10) not null
);
alter table contest_entry add column call_order int;
-- Given up and flown again: it uses up no attempt.
alter table attempt add column flown_again boolean default false not null;
create table attempt_collision (
  attempt_id varchar(80) primary key,
  told_at_ms bigint not null,
  choice varchar(10),
  chosen_at_ms bigint
);
-- Every official time that an attempt ever had; the last holds while the attempt is closed.
create table attempt_result (
  attempt_id varchar(80) not null,
  at_ms bigint not null,
  official_ms bigint not null,
  how varchar(1000) not null,
  person_id varchar(80),
  primary key (attempt_id, at_ms)
);
create table attempt_reopened (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  at_ms bigint not null,
  reason varchar(400) not null,
  person_id varchar(80)
);
create table attempt_signature (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  signed_as varchar(20) not null,
  person_id varchar(80),
  device varchar(80) not null,
  at_ms bigint not null
);
create table attempt_protest (
  id varchar(80) primary key,
  attempt_id varchar(80) not null,
  words varchar(400) not null,
  person_id varchar(80),
  at_ms bigint not null,
  late boolean not null,
  settled varchar(400),
  settled_at_ms bigint
);
