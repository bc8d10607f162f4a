-- The windows as they were when the plan was taken: what moved since then can be said.
create table dayplan_window (
  event_id varchar(80) not null,
  entry varchar(200) not null,
  opens_ms bigint,
  closes_ms bigint,
  primary key (event_id, entry)
);
-- What keeps people or models away: a person is away, a model is mended, a model is stuck aloft.
create table dayplan_setback (
  id varchar(80) primary key,
  event_id varchar(80) not null,
  kind varchar(20) not null,
  who varchar(80) not null,
  before_attempt int not null,
  from_ms bigint not null,
  lasts_s int,
  cures_s int not null,
  by_person varchar(80),
  over_ms bigint
);
