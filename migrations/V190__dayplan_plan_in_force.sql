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
