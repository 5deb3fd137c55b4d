package freshet.fleet;

import java.util.List;

/** One page of the fleet and how many units were found in all. */
public record FleetPage(FleetQuery query, List<FleetRow> rows, int total) {

    public int pages() {
        return Math.max(1, (total + query.size() - 1) / query.size());
    }
}
