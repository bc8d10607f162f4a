-- Attempts that the plan in force leaves out: they are no news as long as it holds.
create table dayplan_given_up (
  event_id varchar(80) not null,
  attempt varchar(200) not null,
  primary key (event_id, attempt)
);
