-- Lots of strip and the loops tied from them. What was typed stands beside what it came to.
create table motor_batch (
  id varchar(80) primary key,
  name varchar(120) not null unique,
  width_mm double precision,
  width_typed varchar(40),
  thickness_mm double precision,
  thickness_typed varchar(40),
  k_inch_gram double precision,
  opened_day varchar(10)
);
create table motor (
  id varchar(80) primary key,
  tag varchar(40) not null unique,
  batch_id varchar(80) not null,
  team varchar(120) not null,
  direction varchar(3) not null,
  loop_mm double precision not null,
  loop_typed varchar(40) not null,
  mass_g double precision not null,
  mass_typed varchar(40) not null,
  breaking_turns int,
  uses int not null
);
create index motor_of_batch on motor (batch_id);
