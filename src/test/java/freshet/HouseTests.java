package freshet;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.stereotype.Controller;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The rules of the house: rooms open only what they may, stones know only Java, one door a room. */
class HouseTests {

    static final JavaClasses HOUSE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("freshet");

    @Test
    void opensOnlyTheDoorsThatEachRoomMayUse() {
        ApplicationModules.of(Freshet.class).verify();
    }

    @Test
    void keepsStonesFreeOfEverythingButJavaAndNumerics() {
        for (String stone : new String[] {"freshet.hydraulics", "freshet.reliability", "freshet.measures"}) {
            classes()
                    .that()
                    .resideInAPackage(stone)
                    .and()
                    .doNotHaveSimpleName("package-info")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(
                            stone, "java..", "org.jspecify..", "org.hipparchus..", "org.apache.commons.statistics..")
                    .check(HOUSE);
            noClasses()
                    .that()
                    .resideInAPackage(stone)
                    .should()
                    .dependOnClassesThat()
                    .areAssignableTo(java.time.Clock.class)
                    .check(HOUSE);
        }
    }

    @Test
    void hasOneDoorARoomAndTransactionsOnlyThere() {
        classes()
                .that()
                .areAnnotatedWith(Transactional.class)
                .should()
                .beAnnotatedWith(Service.class)
                .check(HOUSE);
        classes()
                .that()
                .areAnnotatedWith(Controller.class)
                .should()
                .notBePublic()
                .check(HOUSE);
        Map<String, Long> doors = HOUSE.stream()
                .filter(type -> type.isAnnotatedWith(Service.class))
                .collect(Collectors.groupingBy(JavaClass::getPackageName, Collectors.counting()));
        assertThat(doors)
                .isNotEmpty()
                .allSatisfy((room, count) -> assertThat(count).isOne());
    }
}
