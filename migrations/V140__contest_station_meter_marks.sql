-- What one mark of the torque meter is worth, and where its scale ends.
alter table contest_station add column division_nmm double precision;
alter table contest_station add column division_typed varchar(40);
alter table contest_station add column full_scale_nmm double precision;
alter table contest_station add column full_scale_typed varchar(40);
