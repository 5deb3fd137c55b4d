-- Other ways to measure the flow of a test than a timed container, each as it was measured, and the speed it ran at.
alter table flow_test
    alter column container_l drop not null,
    alter column container_u_l drop not null,
    alter column timing_u_s drop not null,
    add column method text not null default 'TIMED_CONTAINER'
        check (method in ('TIMED_CONTAINER', 'LEVEL_DROP', 'METER', 'TRAJECTORY')),
    add check ((method = 'TIMED_CONTAINER') = (container_l is not null)),
    add check ((container_l is null) = (container_u_l is null) and (container_l is null) = (timing_u_s is null)),

    -- the fall of level in a pit, and how it rose with the pump off, before and after
    add column pit_diameter_mm      double precision check (pit_diameter_mm > 0),
    add column pit_area_m2          double precision check (pit_area_m2 > 0),
    add column pit_area_u_fraction  double precision check (pit_area_u_fraction >= 0),
    add column pit_displaced_fraction double precision check (pit_displaced_fraction >= 0),
    add column fall_mm              double precision check (fall_mm > 0),
    add column fall_s               double precision check (fall_s > 0),
    add column rise_before_mm       double precision check (rise_before_mm >= 0),
    add column rise_before_s        double precision check (rise_before_s > 0),
    add column rise_after_mm        double precision check (rise_after_mm >= 0),
    add column rise_after_s         double precision check (rise_after_s > 0),
    add column level_u_mm           double precision check (level_u_mm >= 0),
    add column fall_timing_u_s      double precision check (fall_timing_u_s >= 0),
    add check (method <> 'LEVEL_DROP'
               or (num_nonnulls(pit_diameter_mm, pit_area_m2) = 1
                   and num_nulls(pit_area_u_fraction, pit_displaced_fraction, fall_mm, fall_s, level_u_mm, fall_timing_u_s) = 0)),
    add check ((rise_before_mm is null) = (rise_before_s is null) and (rise_after_mm is null) = (rise_after_s is null)),

    -- a flow meter in the line
    add column line_meter_m3h        double precision check (line_meter_m3h > 0),
    add column line_meter_u_fraction double precision check (line_meter_u_fraction >= 0),
    add column line_meter_u_m3h      double precision check (line_meter_u_m3h >= 0),
    add check (method <> 'METER' or num_nulls(line_meter_m3h, line_meter_u_fraction, line_meter_u_m3h) = 0),

    -- the jet from a level pipe
    add column jet_bore_mm    double precision check (jet_bore_mm > 0),
    add column jet_reach_mm   double precision check (jet_reach_mm > 0),
    add column jet_fall_mm    double precision check (jet_fall_mm > 0),
    add column jet_length_u_mm double precision check (jet_length_u_mm >= 0),
    add column jet_u_fraction double precision check (jet_u_fraction >= 0),
    add check (method <> 'TRAJECTORY'
               or num_nulls(jet_bore_mm, jet_reach_mm, jet_fall_mm, jet_length_u_mm, jet_u_fraction) = 0),

    add column speed_rpm double precision check (speed_rpm > 0);

-- The speed at which the rated curve holds.
alter table pump_model add column speed_rpm double precision check (speed_rpm > 0);
