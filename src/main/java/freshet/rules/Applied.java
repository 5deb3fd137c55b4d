package freshet.rules;

import java.util.List;

/** The rule that holds for a unit and a job, and those of the same job that fit the unit too but are less near, the nearest first. */
public record Applied(CareRule rule, List<CareRule> overruled) {}
