-- How long each task was planned to take by the last plan that was taken before it began: plans name no task that is over.
create table dayplan_planned (
  event_id varchar(80) not null,
  task varchar(200) not null,
  seconds bigint not null,
  primary key (event_id, task)
);
