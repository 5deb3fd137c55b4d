/** Room: the board by the door: the rules that make work due, planning by season and reading, and what is late or soon due. */
@ApplicationModule(
        allowedDependencies = {
            "phrases",
            "rules",
            "happenings",
            "checklists",
            "readings",
            "pumps",
            "places",
            "people",
            "timetable",
            "measures",
            "reliability"
        })
@NullMarked
package freshet.board;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
