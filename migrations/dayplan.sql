-- The plan that people work by: one for each event.
create table dayplan_taken (
  event_id varchar(80) primary key,
  at_ms bigint not null,
  person_id varchar(80)
);
create table dayplan_task (
  event_id varchar(80) not null,
  task varchar(200) not null,
  start_ms bigint not null,
  end_ms bigint not null,
  people varchar(400) not null,
  motor varchar(80),
  primary key (event_id, task)
);
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
-- Attempts that the plan in force leaves out: they are no news as long as it holds.
create table dayplan_given_up (
  event_id varchar(80) not null,
  attempt varchar(200) not null,
  primary key (event_id, attempt)
);
-- How long each task was planned to take by the last plan that was taken before it began: plans name no task that is over.
-- By the try of the attempt for which the plan was made, from 1; 0 for a task that is no attempt's.
create table dayplan_planned (
  event_id varchar(80) not null,
  task varchar(200) not null,
  nth int not null,
  seconds bigint not null,
  primary key (event_id, task, nth)
);
