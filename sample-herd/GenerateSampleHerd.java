import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;

/**
 * Writes the sample herd: an invented farm, its cows and two years of monthly test days.
 *
 * <p>{@code java sample-herd/GenerateSampleHerd.java [folder]}, from the root of the project; the folder is {@code sample-herd} when it is not
 * given. Same bytes every time: one seed, {@link Random} (whose sequence is specified) and {@link StrictMath}.
 *
 * <p>Nothing here is measured on real cows. The figures of the model are ours, set so that the herd looks like a grazing herd of the Azores;
 * the README beside this file lists what is odd on purpose.
 */
public final class GenerateSampleHerd {
    private static final long SEED = 20241104L;
    private static final String SCHEME = "example.eartag";

    private static final LocalDate WINDOW_START = LocalDate.of(2024, 11, 1);
    private static final LocalDate WINDOW_END = LocalDate.of(2026, 10, 31);

    private static final int HOLSTEINS_AT_START = 80;
    private static final int JERSEYS_AT_START = 25;
    private static final int HEIFERS_PER_AUTUMN = 32;

    /**
     * Names are Portuguese words for flowers, colours, weather and places; two cows share a name only by number. Escaped, because
     * JDK 17 reads a source file in the encoding of the machine.
     */
    private static final String[] NAMES = ("A\u00e7ucena Alegria Alfazema Am\u00eandoa Amora Andorinha Aurora Avel\u00e3 Azeitona Azinha Baunilha Beleza Bolota Bonita Borboleta "
                    + "Branquinha Brisa Cam\u00e9lia Canela Cantiga Carocha Castanha Cereja Chuva Cidra Coroa Cotovia Damasca Do\u00e7ura Esmeralda Espiga "
                    + "Estrela Fagulha Fa\u00edsca Farrusca Fidalga Flor Formosa Framboesa Gaivota Gar\u00e7a Garota Geada Ginja Giesta Graciosa Hera Hort\u00eansia "
                    + "Ilhoa Jarra Jasmim J\u00f3ia Laranja Lavanda Levada Lua Luna Madressilva Malhada Manteiga Mar\u00e9 Margarida Marquesa Melissa Merenda Mimosa "
                    + "Morena Morgada Murta Nata Neblina N\u00easpera Nespereira Neve Nuvem Oliva Onda Orvalho Palmeira Papoila P\u00e9rola Pet\u00fania Pinta Pintada Pitanga "
                    + "Pombinha Primavera Princesa Quinta Rabina Rainha Ribeira Rola Rom\u00e3 Rosa Roseira Rosinha Ruiva Salsa Sardinha Saudade Serena Serrana "
                    + "Sombra Tangerina Teimosa T\u00edlia Tormenta Trigueira Trovoada Tulipa Urze Valente Veludo Videira Vila Violeta Zita")
            .split(" ");

    private final Random random = new Random(SEED);
    private final List<LocalDate> visits = visits();
    private final List<Cow> cows = new ArrayList<>();

    private enum Breed {
        HOL,
        JER
    }

    /** Peak shape of Wood's curve and composition of a breed and parity class; yields in kg per day, contents in percent. */
    private record ClassLevel(double peakKg, double rise, double fall, double fatPct, double proteinPct) {
        static ClassLevel of(Breed breed, int parity) {
            int group = Math.min(parity, 3);
            double rise = new double[] {0.16, 0.20, 0.22}[group - 1];
            double fall = new double[] {0.0026, 0.0037, 0.0042}[group - 1];
            return breed == Breed.HOL
                    ? new ClassLevel(new double[] {25.0, 30.5, 33.0}[group - 1], rise, fall, 3.85, 3.25)
                    : new ClassLevel(new double[] {17.0, 20.5, 22.5}[group - 1], rise, fall * 0.95, 5.35, 3.90);
        }

        double milkKg(int daysInMilk) {
            double peakDay = rise / fall;
            return peakKg * StrictMath.pow(daysInMilk / peakDay, rise) * StrictMath.exp(-fall * (daysInMilk - peakDay));
        }
    }

    private static final class Cow {
        Breed breed;
        LocalDate birth;
        boolean birthKnown = true;
        String id = "";
        String name = "";
        double levelLog; // her own lasting deviation, log of milk
        double fatLevel;
        double proteinLevel;
        double sccLevel; // in score units
        final List<Milking> lactations = new ArrayList<>();
        LocalDate departure;
        String kind = "";
        String reason = "";
        String note = "";
        final TreeMap<LocalDate, Test> tests = new TreeMap<>();
    }

    private static final class Milking {
        int parity;
        LocalDate calved;
        LocalDate conceived; // empty for a cow that does not get in calf again
        LocalDate driedOff;
        boolean dryOffWritten = true;
    }

    private record Test(String milkKg, String fatPct, String proteinPct, String lactosePct, String scc) {
        Test withMilk(String kg) {
            return new Test(kg, fatPct, proteinPct, lactosePct, scc);
        }

        Test withoutSample() {
            return new Test(milkKg, "", "", "", "");
        }

        Test withoutLactose() {
            return new Test(milkKg, fatPct, proteinPct, "", scc);
        }

        Test withoutScc() {
            return new Test(milkKg, fatPct, proteinPct, lactosePct, "");
        }
    }

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-herd");
        if (!Files.isDirectory(folder)) {
            throw new IllegalArgumentException("no folder " + folder + ": run from the root of the project or name the folder");
        }
        new GenerateSampleHerd().run(folder);
    }

    private void run(Path folder) {
        for (int i = 0; i < HOLSTEINS_AT_START + JERSEYS_AT_START; i++) {
            cows.add(cowOfTheFirstDay(i < HOLSTEINS_AT_START ? Breed.HOL : Breed.JER));
        }
        for (int year = 2024; year <= 2026; year++) {
            for (int i = 0; i < HEIFERS_PER_AUTUMN; i++) {
                LocalDate calves = LocalDate.of(year, 9, 4).plusDays((long) (95 * random.nextDouble()));
                cows.add(heifer(i % 5 == 4 ? Breed.JER : Breed.HOL, calves));
            }
        }
        cows.removeIf(cow -> cow.lactations.get(0).calved.isAfter(WINDOW_END));
        cows.forEach(this::milkThrough);
        Cow unserved = new Cow();
        unserved.breed = Breed.HOL;
        unserved.birth = LocalDate.of(2024, 12, 19);
        cows.add(unserved);
        giveNumbersAndNames();
        addOddities();
        write(folder);
        new OtherRecords(cows).write(folder);
    }

    /** Monthly visits about the tenth, never on a Sunday; two of them late because the weigher was ill or the ferry did not sail. */
    private List<LocalDate> visits() {
        List<LocalDate> dates = new ArrayList<>();
        for (LocalDate month = WINDOW_START; month.isBefore(WINDOW_END); month = month.plusMonths(1)) {
            LocalDate date = month.withDayOfMonth(8 + random.nextInt(6));
            if (month.equals(LocalDate.of(2025, 8, 1)) || month.equals(LocalDate.of(2026, 2, 1))) {
                date = month.withDayOfMonth(19);
            }
            dates.add(date.getDayOfWeek() == DayOfWeek.SUNDAY ? date.plusDays(1) : date);
        }
        return dates;
    }

    private Cow newCow(Breed breed) {
        Cow cow = new Cow();
        cow.breed = breed;
        cow.levelLog = 0.10 * clipped();
        cow.fatLevel = 0.22 * random.nextGaussian() - 0.8 * cow.levelLog;
        cow.proteinLevel = 0.10 * random.nextGaussian() - 0.4 * cow.levelLog;
        cow.sccLevel = 0.6 * random.nextGaussian();
        return cow;
    }

    /** A cow that was in the herd before the window; her last calving before it started the lactation that runs (or has just ended) on the first day. */
    private Cow cowOfTheFirstDay(Breed breed) {
        Cow cow = newCow(breed);
        double[] shareOfParity = {0.27, 0.22, 0.17, 0.13, 0.09, 0.06, 0.04, 0.02};
        double draw = random.nextDouble();
        int parity = 1;
        while (parity < shareOfParity.length && draw > shareOfParity[parity - 1]) {
            draw -= shareOfParity[parity - 1];
            parity++;
        }
        LocalDate calved = LocalDate.of(2023, 8, 28).plusDays((long) (150 * (random.nextDouble() + random.nextDouble()) / 2));
        if (random.nextInt(12) == 0) {
            calved = LocalDate.of(2024, 2, 10).plusDays(random.nextInt(60)); // the few that calve in spring
        }
        cow.lactations.add(lactation(parity, calved));
        LocalDate firstCalved = calved;
        for (int p = parity; p > 1; p--) {
            firstCalved = firstCalved.minusDays(366 + random.nextInt(24));
        }
        cow.birth = firstCalved.minusDays(705 + random.nextInt(130));
        addLactationsUntilTheWindowEnds(cow);
        while (cow.lactations.size() > 1 && !cow.lactations.get(1).calved.isAfter(WINDOW_START)) {
            cow.lactations.remove(0);
        }
        return cow;
    }

    private Cow heifer(Breed breed, LocalDate calves) {
        Cow cow = newCow(breed);
        cow.birth = calves.minusDays(705 + random.nextInt(110));
        cow.lactations.add(lactation(1, calves));
        addLactationsUntilTheWindowEnds(cow);
        return cow;
    }

    private Milking lactation(int parity, LocalDate calved) {
        Milking lactation = new Milking();
        lactation.parity = parity;
        lactation.calved = calved;
        return lactation;
    }

    /** Each lactation ends in the next calving (365 to 430 days on), or she is not in calf again and leaves late in it, or she leaves early. */
    private void addLactationsUntilTheWindowEnds(Cow cow) {
        while (true) {
            Milking current = cow.lactations.get(cow.lactations.size() - 1);
            boolean beforeTheWindow = current.calved.plusDays(300).isBefore(WINDOW_START);
            double leavesShare = 0.10 + 0.035 * current.parity;
            if (!beforeTheWindow && random.nextDouble() < leavesShare) {
                leave(cow, current);
                return;
            }
            int gestationDays = (cow.breed == Breed.HOL ? 279 : 281) + (int) StrictMath.round(4 * clipped());
            int intervalDays = Math.min(430, 365 + (int) (-16 * StrictMath.log(1 - random.nextDouble())));
            LocalDate next = current.calved.plusDays(intervalDays);
            current.conceived = next.minusDays(gestationDays);
            current.driedOff = next.minusDays(60 + (int) StrictMath.round(6 * clipped()));
            if (next.isAfter(WINDOW_END)) {
                return;
            }
            cow.lactations.add(lactation(current.parity + 1, next));
        }
    }

    private void leave(Cow cow, Milking current) {
        boolean late = random.nextDouble() < 0.65;
        LocalDate earliest = current.calved.plusDays(late ? 255 + random.nextInt(75) : 35 + random.nextInt(160));
        LocalDate day = earliest.isBefore(WINDOW_START) ? WINDOW_START.plusDays(14 + random.nextInt(90)) : earliest;
        if (day.getDayOfWeek() == DayOfWeek.SUNDAY) {
            day = day.plusDays(1);
        }
        if (day.isAfter(WINDOW_END)) {
            return;
        }
        cow.departure = day;
        cow.kind = "slaughter";
        if (late) {
            cow.reason = random.nextInt(100) < 70 ? "Fertility" : current.parity >= 6 ? "Age" : "Production";
        } else {
            String[] reasons = {"Mastitis", "LegOrClaw", "Health", "Mastitis", "MilkingAbility", "Parturition"};
            cow.reason = reasons[random.nextInt(reasons.length)];
        }
    }

    /** Normal deviate cut at two, so that no biological span leaves its range. */
    private double clipped() {
        return Math.max(-2, Math.min(2, random.nextGaussian()));
    }

    private void milkThrough(Cow cow) {
        for (Milking lactation : cow.lactations) {
            milkThrough(cow, lactation);
        }
        if (cow.kind.equals("slaughter") && cow.reason.equals("Mastitis")) {
            cow.note = "cells high for months";
        }
    }

    private void milkThrough(Cow cow, Milking lactation) {
        ClassLevel level = ClassLevel.of(cow.breed, lactation.parity);
        double lactationLog = 0.06 * random.nextGaussian();
        double persistency = 0.0006 * random.nextGaussian(); // per day in milk, log of milk
        boolean chronic = random.nextDouble() < 0.07 + 0.02 * lactation.parity || cow.reason.equals("Mastitis");
        int chronicFromDay = 20 + random.nextInt(140);
        double drift = 0.06 * random.nextGaussian(); // AR(1) between test days
        double sccDrift = 0.6 * random.nextGaussian();
        LocalDate previous = lactation.calved;
        for (LocalDate visit : visits) {
            int daysInMilk = (int) ChronoUnit.DAYS.between(lactation.calved, visit);
            boolean dry = lactation.driedOff != null && !visit.isBefore(lactation.driedOff);
            boolean gone = cow.departure != null && !visit.isBefore(cow.departure);
            if (daysInMilk < 5 || dry || gone) {
                continue;
            }
            double keep = StrictMath.pow(0.80, ChronoUnit.DAYS.between(previous, visit) / 30.0);
            drift = keep * drift + 0.06 * StrictMath.sqrt(1 - keep * keep) * random.nextGaussian();
            sccDrift = keep * sccDrift + 0.6 * StrictMath.sqrt(1 - keep * keep) * random.nextGaussian();
            previous = visit;
            boolean clinical = random.nextDouble() < 0.02;

            int pregnantDays = lactation.conceived == null ? 0 : (int) ChronoUnit.DAYS.between(lactation.conceived, visit);
            double log = cow.levelLog
                    + lactationLog
                    + persistency * (daysInMilk - 120)
                    + drift
                    + 0.035 * random.nextGaussian()
                    - 0.0018 * Math.max(0, pregnantDays - 130)
                    - (clinical ? 0.25 : 0)
                    - (chronic && daysInMilk > chronicFromDay ? 0.05 : 0)
                    + grassLog(visit);
            double milkKg = Math.max(3.2, level.milkKg(daysInMilk) * StrictMath.exp(log));
            double score = 2.0
                    + 0.18 * Math.min(lactation.parity, 6)
                    + cow.sccLevel
                    + sccDrift
                    + 0.003 * Math.max(0, daysInMilk - 60)
                    + 1.2 * StrictMath.exp(-daysInMilk / 12.0)
                    + (chronic && daysInMilk > chronicFromDay ? 2.9 : 0)
                    + (clinical ? 3.5 : 0)
                    + 0.5 * random.nextGaussian();
            cow.tests.put(visit, test(cow, level, daysInMilk, log, milkKg, score, visit));
        }
    }

    private Test test(Cow cow, ClassLevel level, int daysInMilk, double log, double milkKg, double score, LocalDate visit) {
        double early = StrictMath.exp(-daysInMilk / 14.0);
        double stage = daysInMilk / 305.0 - 0.35;
        double dilution = log - cow.levelLog;
        double fat = level.fatPct + cow.fatLevel + 0.9 * early + 0.75 * stage - 1.3 * dilution - 3.0 * grassLog(visit) + 0.24 * random.nextGaussian();
        double protein = level.proteinPct + cow.proteinLevel + 0.8 * early + 0.50 * stage - 0.5 * dilution + 0.8 * grassLog(visit)
                + 0.08 * random.nextGaussian();
        double lactose = 4.82 - 0.10 * stage - 0.05 * Math.max(0, score - 4) + 0.08 * random.nextGaussian();
        double scc = Math.max(8, Math.min(9_000, 100 * StrictMath.pow(2, score - 3)));
        return new Test(decimals(milkKg, 1), decimals(fat, 2), decimals(protein, 2), decimals(lactose, 2), decimals(scc, 0));
    }

    /** Grass of the islands, log of milk: the flush about 20 April, the least about 20 September after the dry weeks. */
    private static double grassLog(LocalDate date) {
        double phase = 2 * StrictMath.PI * (date.getDayOfYear() - 110) / 365.25;
        return 0.055 * StrictMath.cos(phase) + 0.015 * StrictMath.cos(2 * phase);
    }

    private void giveNumbersAndNames() {
        cows.sort(Comparator.comparing((Cow cow) -> cow.birth).thenComparing(cow -> cow.breed));
        int number = 211;
        int name = 0;
        for (Cow cow : cows) {
            number += 1 + (random.nextInt(3) == 0 ? random.nextInt(4) : 0); // the gaps are calves that were sold or not kept
            cow.id = String.format(java.util.Locale.ROOT, "PT-BA-%04d", number);
            if (random.nextInt(14) > 0) {
                int round = name / NAMES.length;
                cow.name = NAMES[(name * 37) % NAMES.length] + (round == 0 ? "" : " " + (round + 1));
                name++;
            }
        }
    }

    /** What real books have too. Each line of this method stands in the README. */
    private void addOddities() {
        // Missed tests (2 %), samples that broke or leaked (2 %), cells not counted (1 %).
        for (Cow cow : cows) {
            for (LocalDate visit : List.copyOf(cow.tests.keySet())) {
                int draw = random.nextInt(1000);
                if (draw < 20) {
                    cow.tests.remove(visit);
                } else if (draw < 40) {
                    cow.tests.computeIfPresent(visit, (day, test) -> test.withoutSample());
                } else if (draw < 50) {
                    cow.tests.computeIfPresent(visit, (day, test) -> test.withoutScc());
                }
            }
        }
        // No lactose from the laboratory at one visit.
        LocalDate withoutLactose = visits.get(10);
        cows.forEach(cow -> cow.tests.computeIfPresent(withoutLactose, (day, test) -> test.withoutLactose()));

        // First test late: two visits missed after calving.
        Cow late = first(cow -> startedIn(cow, 2025, Month.OCTOBER) && last(cow).parity <= 4 && testsOf(cow, last(cow)).size() > 8);
        testsOf(late, last(late)).subList(0, 2).forEach(late.tests::remove);

        // Digits changed round: 31.6 became 13.6, say. Plausible for a cow, not for this one.
        Cow swapped = null;
        LocalDate swappedOn = null;
        for (Cow cow : cows) {
            for (LocalDate visit : cow.tests.keySet()) {
                String kg = cow.tests.get(visit).milkKg;
                if (swapped == null && cow != late && visit.isAfter(LocalDate.of(2026, 1, 1)) && kg.matches("3[12]\\.[0-9]")) {
                    swapped = cow;
                    swappedOn = visit;
                }
            }
        }
        swapped.tests.computeIfPresent(swappedOn, (day, test) ->
                test.withMilk("" + test.milkKg.charAt(1) + test.milkKg.charAt(0) + test.milkKg.substring(2)));

        // Sold in full milk; the note holds a comma and quotation marks.
        Cow sold = first(cow -> staysToTheEnd(cow) && cow != late && startedIn(cow, 2025, Month.NOVEMBER) && last(cow).parity <= 3);
        depart(sold, LocalDate.of(2026, 3, 17), "sale", "Sale", "in milk, to a neighbour; asked for \"a quiet one\"");

        // Died.
        Cow died = first(cow -> staysToTheEnd(cow) && cow != late && startedIn(cow, 2025, Month.OCTOBER) && last(cow).parity >= 3);
        depart(died, LocalDate.of(2026, 1, 22), "death", "Health", "found dead in the paddock");

        // One lent to a relative's herd, one put down on the farm.
        Cow lent = first(cow -> staysToTheEnd(cow) && cow != late && startedIn(cow, 2024, Month.DECEMBER) && cow.breed == Breed.JER);
        depart(lent, LocalDate.of(2025, 5, 28), "transfer", "Other", "to a relative's herd");
        Cow putDown = first(cow -> cow.departure != null && cow.reason.equals("LegOrClaw"));
        putDown.kind = "cullOnFarm";
        putDown.note = "could not rise";

        // Bought in: birth date not known. A dry-off nobody wrote down, though she calved again.
        Cow bought = first(cow -> staysToTheEnd(cow) && last(cow).parity >= 5);
        bought.birthKnown = false;
        Cow unwritten = first(cow -> cow != bought && cow.lactations.size() > 1 && cow.lactations.get(0).driedOff.isAfter(WINDOW_START));
        unwritten.lactations.get(0).dryOffWritten = false;
    }

    private Cow first(java.util.function.Predicate<Cow> rule) {
        return cows.stream().filter(cow -> !cow.lactations.isEmpty()).filter(rule).findFirst().orElseThrow();
    }

    private static Milking last(Cow cow) {
        return cow.lactations.get(cow.lactations.size() - 1);
    }

    private static boolean staysToTheEnd(Cow cow) {
        return cow.departure == null;
    }

    private static boolean startedIn(Cow cow, int year, Month month) {
        return cow.lactations.stream().anyMatch(l -> l.calved.getYear() == year && l.calved.getMonth() == month);
    }

    private static List<LocalDate> testsOf(Cow cow, Milking lactation) {
        return List.copyOf(cow.tests.tailMap(lactation.calved, true).keySet());
    }

    /** She leaves on that day: what lies after it never happened. */
    private static void depart(Cow cow, LocalDate day, String kind, String reason, String note) {
        cow.departure = day;
        cow.kind = kind;
        cow.reason = reason;
        cow.note = note;
        cow.tests.tailMap(day, true).clear();
        cow.lactations.removeIf(lactation -> !lactation.calved.isBefore(day));
    }

    private void write(Path folder) {
        List<String> animals = new ArrayList<>();
        List<String> calvings = new ArrayList<>();
        List<String> tests = new ArrayList<>();
        List<String> dryOffs = new ArrayList<>();
        List<String> departures = new ArrayList<>();
        for (Cow cow : cows) {
            animals.add(line(cow, cow.name, cow.breed.name(), "female", cow.birthKnown ? cow.birth.toString() : ""));
            for (Milking lactation : cow.lactations) {
                calvings.add(line(cow, lactation.calved.toString(), Integer.toString(lactation.parity)));
                LocalDate dry = lactation.driedOff;
                boolean driedOffHere = dry != null && !dry.isAfter(WINDOW_END) && (cow.departure == null || dry.isBefore(cow.departure));
                if (driedOffHere && lactation.dryOffWritten) {
                    dryOffs.add(line(cow, dry.toString()));
                }
            }
            cow.tests.forEach((day, test) ->
                    tests.add(line(cow, day.toString(), test.milkKg, test.fatPct, test.proteinPct, test.lactosePct, test.scc)));
            if (cow.departure != null) {
                departures.add(line(cow, cow.departure.toString(), cow.kind, cow.reason, cow.note));
            }
        }
        String key = "animal_scheme,animal_id,";
        save(folder, "animals.csv", key + "name,breed,sex,birth_date", animals);
        save(folder, "calvings.csv", key + "date,parity", calvings);
        save(folder, "test-days.csv", key + "date,milk_kg,fat_pct,protein_pct,lactose_pct,scc_thousand_per_ml", tests);
        save(folder, "dry-offs.csv", key + "date", dryOffs);
        save(folder, "departures.csv", key + "date,kind,reason,note", departures);
        String herd = "{\"code\": \"brejo-alto\", \"name\": \"Quinta do Brejo Alto\", \"timeZone\": \"Atlantic/Azores\"}\n";
        try {
            Files.writeString(folder.resolve("herd.json"), herd, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Services, checks, treatments, single milkings and the tank. Drawn apart, so that cows and test days stay as they are. */
    private static final class OtherRecords {
        private final Random random = new Random(SEED + 1);
        private final List<Cow> cows;
        private final List<String> services = new ArrayList<>();
        private final List<String> checks = new ArrayList<>();
        private final List<String> treatments = new ArrayList<>();
        private final List<String> foremilk = new ArrayList<>();
        private final List<String> milkings = new ArrayList<>();
        private final List<String> readings = new ArrayList<>();
        private final List<String> pickups = new ArrayList<>();
        private final List<String> decisions = new ArrayList<>();

        OtherRecords(List<Cow> cows) {
            this.cows = cows;
        }

        void write(Path folder) {
            for (Cow cow : cows) {
                cow.lactations.forEach(lactation -> breed(cow, lactation));
                if (!cow.tests.isEmpty() && random.nextInt(9) == 0) {
                    treat(cow);
                }
                if (random.nextInt(4) == 0) {
                    milkTwice(cow);
                }
            }
            fillTank();
            decide();
            treatAtTheEnd();
            String key = "animal_scheme,animal_id,";
            save(folder, "services.csv", key + "date,service_of_day,method,sire", services);
            save(folder, "pregnancy-checks.csv", key + "date,result,method", checks);
            save(folder, "breeding-decisions.csv", key + "date,decision,reason", decisions);
            save(folder, "prices.csv", "valid_from,currency,milk_price_per_kg,heifer_price,cull_price,calf_price,feed_price_per_kg_dry_matter,service_price,fixed_cost_per_cow_month",
                    List.of("2024-11-01,EUR,0.40,1500,760,90,0.24,22,45", "2026-01-01,EUR,0.42,1650,830,110,0.24,24,45"));
            save(folder, "settings.csv", "valid_from,waiting_days,check_days,dry_days,colostrum_days,high_from,tank_limit",
                    List.of("2024-11-01,50,35,60,4,200,eu-853-2004", "2026-01-01,60,33,60,4,200,eu-853-2004"));
            save(folder, "treatments.csv", key + "started_on,product_name,diagnosis,ended_on,milk_withheld_until,meat_withheld_until", treatments);
            save(folder, "foremilk-checks.csv", key + "date,milking_of_day,quarter,finding,udder,cow_ill,action", foremilk);
            save(folder, "milkings.csv", key + "started_at,milking_of_day,milk_kg,milkings_per_day", milkings);
            save(folder, "tank-readings.csv", "tank,read_at,milk_litres,temperature_c", readings);
            save(folder, "tank-pickups.csv", "tank,picked_up_at,milk_kg,fat_pct,protein_pct,scc_thousand_per_ml", pickups);
        }

        private static boolean isThere(Cow cow, LocalDate day) {
            return !day.isBefore(WINDOW_START) && !day.isAfter(WINDOW_END) && (cow.departure == null || day.isBefore(cow.departure));
        }

        /** Served every 21 days until she conceives; the cows that never do are given up after three times. */
        private void breed(Cow cow, Milking lactation) {
            int before = random.nextInt(3);
            LocalDate last = lactation.conceived != null ? lactation.conceived : lactation.calved.plusDays(110 + random.nextInt(20));
            for (int i = before; i >= 0; i--) {
                LocalDate day = last.minusDays(21L * i);
                if (isThere(cow, day) && !day.isBefore(lactation.calved.plusDays(45))) {
                    services.add(line(cow, day.toString(), "1", random.nextInt(8) == 0 ? "naturalService" : "insemination", "example.bull:" + (301 + random.nextInt(6))));
                }
            }
            LocalDate checked = last.plusDays(33 + random.nextInt(6));
            if (isThere(cow, last) && isThere(cow, checked)) {
                checks.add(line(cow, checked.toString(), lactation.conceived != null ? "pregnant" : "empty", "echography"));
            }
        }

        /** Every second cow that was found open more than 150 days after calving is not served again; one of them is given another chance. */
        private void decide() {
            int open = 0;
            for (Cow cow : cows) {
                Milking lactation = cow.lactations.isEmpty() ? null : last(cow);
                if (lactation == null || lactation.conceived != null) {
                    continue;
                }
                LocalDate day = lactation.calved.plusDays(165);
                if (isThere(cow, day) && open++ % 2 == 0) {
                    decisions.add(line(cow, day.toString(), "doNotBreed", "not in calf by day 165"));
                    if (open == 5 && isThere(cow, day.plusDays(20))) {
                        decisions.add(line(cow, day.plusDays(20).toString(), "breedAgain", "milks too well to let go"));
                    }
                }
            }
        }

        /** Cows the milker has to know of on the last test day: one treated, one with no end entered, two quarters with flakes, one of them cleared. */
        private void treatAtTheEnd() {
            LocalDate end = cows.stream().filter(cow -> !cow.tests.isEmpty()).map(cow -> cow.tests.lastKey()).max(Comparator.naturalOrder()).orElseThrow();
            List<Cow> tested = cows.stream().filter(cow -> cow.tests.containsKey(end) && cow.departure == null).toList();
            LocalDate start = end.minusDays(2);
            treatments.add(line(tested.get(4), start.toString(), "invented tube", "mastitis RF", end.minusDays(1).toString(), end.plusDays(4).toString(),
                    end.plusDays(18).toString()));
            foremilk.add(line(tested.get(4), start.toString(), "am", "RF", "flakes", "hard", "false", "veterinarianCalled"));
            treatments.add(line(tested.get(11), end.minusDays(1).toString(), "invented powder", "off her feed", end.toString(), "", ""));
            foremilk.add(line(tested.get(20), end.toString(), "am", "LR", "flakes", "normal", "false", "withheld"));
            foremilk.add(line(tested.get(27), end.minusDays(2).toString(), "am", "LF", "watery", "normal", "false", "withheld"));
            foremilk.add(line(tested.get(27), end.toString(), "am", "LF", "normal", "normal", "false", "none"));
        }

        /** The product and its days are invented; two of the cows have a withholding day that nobody entered. */
        private void treat(Cow cow) {
            List<LocalDate> days = List.copyOf(cow.tests.keySet());
            LocalDate start = days.get(random.nextInt(days.size())).plusDays(3);
            if (!isThere(cow, start.plusDays(3))) {
                return;
            }
            String quarter = new String[] {"LF", "RF", "LR", "RR"}[random.nextInt(4)];
            foremilk.add(line(cow, start.toString(), "am", quarter, "flakes", "hard", "false", "veterinarianCalled"));
            foremilk.add(line(cow, start.plusDays(3).toString(), "am", quarter, "normal", "normal", "false", "none"));
            boolean entered = treatments.size() % 8 != 5;
            treatments.add(line(cow, start.toString(), "invented tube", "mastitis " + quarter, start.plusDays(2).toString(),
                    entered ? start.plusDays(7).toString() : "", start.plusDays(21).toString()));
        }

        /** Both milkings of her last test day; together they are what was weighed then. */
        private void milkTwice(Cow cow) {
            if (cow.tests.isEmpty() || cow.tests.lastEntry().getValue().milkKg.isEmpty()) {
                return;
            }
            LocalDate day = cow.tests.lastKey();
            BigDecimal both = new BigDecimal(cow.tests.lastEntry().getValue().milkKg);
            BigDecimal morning = both.multiply(new BigDecimal("0.57")).setScale(1, RoundingMode.HALF_UP);
            milkings.add(line(cow, day + "T07:1" + random.nextInt(10) + ":00Z", "am", morning.toPlainString(), "2"));
            milkings.add(line(cow, day + "T17:3" + random.nextInt(10) + ":00Z", "pm", both.subtract(morning).toPlainString(), "2"));
        }

        /** The tank is read in the morning and emptied every second day of the last two months. */
        private void fillTank() {
            for (LocalDate day = LocalDate.of(2026, 9, 1); !day.isAfter(WINDOW_END); day = day.plusDays(2)) {
                double kg = 0;
                for (Cow cow : cows) {
                    var last = cow.tests.floorEntry(day);
                    if (isThere(cow, day) && last != null && last.getKey().isAfter(day.minusDays(40)) && !last.getValue().milkKg.isEmpty()) {
                        kg += Double.parseDouble(last.getValue().milkKg);
                    }
                }
                kg *= 2 * 0.95;
                readings.add("main," + day + "T08:05:00Z," + decimals(kg / 1.03, 0) + "," + decimals(3.2 + random.nextDouble(), 1));
                pickups.add("main," + day + "T10:4" + random.nextInt(10) + ":00Z," + decimals(kg, 0) + "," + decimals(4.2 + 0.1 * random.nextGaussian(), 2)
                        + "," + decimals(3.45 + 0.05 * random.nextGaussian(), 2) + "," + decimals(210 + 20 * random.nextGaussian(), 0));
            }
        }
    }

    private static String line(Cow cow, String... cells) {
        StringBuilder line = new StringBuilder(SCHEME).append(',').append(cow.id);
        for (String cell : cells) {
            boolean quoted = cell.contains(",") || cell.contains("\"");
            line.append(',').append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
        }
        return line.toString();
    }

    private static void save(Path folder, String name, String header, List<String> lines) {
        try {
            Files.writeString(folder.resolve(name), header + "\n" + String.join("\n", lines) + "\n", StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String decimals(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
