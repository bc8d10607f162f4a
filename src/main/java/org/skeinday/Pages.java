package org.skeinday;

import java.time.Clock;
import java.util.function.Supplier;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.web.ChecksBeside;
import org.skeinday.attempt.web.ChoicePages;
import org.skeinday.attempt.web.DeskPages;
import org.skeinday.attempt.web.FinalPages;
import org.skeinday.attempt.web.FirstPages;
import org.skeinday.attempt.web.NowPages;
import org.skeinday.attempt.web.OrderPages;
import org.skeinday.attempt.web.RecordPages;
import org.skeinday.attempt.web.ResultPages;
import org.skeinday.attempt.web.TimingPages;
import org.skeinday.attempt.web.WallPages;
import org.skeinday.audit.web.AuditPages;
import org.skeinday.bench.web.AlonePages;
import org.skeinday.bench.web.BenchPages;
import org.skeinday.bench.web.WindingPages;
import org.skeinday.dayplan.web.DayBeside;
import org.skeinday.dayplan.web.DayPages;
import org.skeinday.device.web.PinGate;
import org.skeinday.hall.web.HallPages;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.paper.web.Guide;
import org.skeinday.paper.web.GuidePages;
import org.skeinday.paper.web.KeyInPages;
import org.skeinday.paper.web.PaperPages;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.http.ScreenLight;
import org.skeinday.platform.record.ActStore;
import org.skeinday.prepare.web.ExportPages;
import org.skeinday.prepare.web.FilePages;
import org.skeinday.prepare.web.HistoryPages;
import org.skeinday.prepare.web.MotorPages;
import org.skeinday.prepare.web.PeoplePages;
import org.skeinday.prepare.web.PracticePages;
import org.skeinday.prepare.web.PrepareContext;
import org.skeinday.prepare.web.PreparePages;
import org.skeinday.prepare.web.ResultFilePages;
import org.skeinday.review.web.EveningPages;
import org.skeinday.review.web.SearchPages;
import org.skeinday.review.web.SeasonPages;
import org.skeinday.steps.web.ChecksPages;
import org.skeinday.steps.web.ListPages;
import org.skeinday.units.UnitSystem;

/**
 * The pages of the day, by the rooms they stand in.
 *
 * @param desk what nearly every page works with
 * @param pins what tells the coach's PIN from another
 * @param loadSolver makes the plan engine ready; waits until it is
 * @param newId a fresh id for each call
 * @param address that tablets use, printed on tags
 * @param units that the team has now
 */
record Pages(
        PrepareContext desk,
        Pace pace,
        PinGate pins,
        Runnable loadSolver,
        Supplier<String> newId,
        Supplier<String> address,
        Supplier<UnitSystem> units) {

    /** Names every route of them. */
    void open(Routes routes) {
        ActStore record = desk.record();
        routes.quietWhile(() -> record.read(AttemptStore::quietNow).isPresent());
        ReaderUnits.register(routes, units);
        ScreenLight.register(routes);
        attempts(routes);
        bench(routes);
        evening(routes);
        prepare(routes);
        paper(routes);
    }

    private void attempts(Routes routes) {
        ActStore record = desk.record();
        FormActs forms = desk.forms();
        Page page = desk.page();
        Clock clock = desk.clock();
        var beside = new DayBeside(record.people()::name, clock.getZone());
        new NowPages(record, forms, page, clock, beside).register(routes);
        new FirstPages(record, forms, page).register(routes);
        new TimingPages(record, forms, page, clock, pins).register(routes);
        new ChoicePages(record, page, clock).register(routes);
        new RecordPages(record, forms, page, clock, pins).register(routes);
        new DeskPages(record, forms, page, clock, pins).register(routes);
        ResultPages results = new ResultPages(record, page, clock);
        results.register(routes);
        new FinalPages(record, forms, page, clock, pins, results).register(routes);
        new WallPages(record, page, clock).register(routes);
        new OrderPages(record, page, clock).register(routes);
        new DayPages(record, forms, page, clock, newId, loadSolver).register(routes);
    }

    private void bench(Routes routes) {
        ActStore record = desk.record();
        FormActs forms = desk.forms();
        Page page = desk.page();
        Clock clock = desk.clock();
        var beside = new ChecksBeside(clock);
        new ChecksPages(record, forms, page, clock, beside).register(routes);
        new ListPages(record, forms, page).register(routes);
        new HallPages(record, forms, page, clock, beside).register(routes);
        new BenchPages(record, forms, page, clock, pace).register(routes);
        new WindingPages(record, forms, page, clock).register(routes);
        new AlonePages(record, forms, page, clock, pace).register(routes);
    }

    private void evening(Routes routes) {
        ActStore record = desk.record();
        new EveningPages(record, desk.forms(), desk.page(), desk.clock()).register(routes);
        new SeasonPages(record, desk.forms(), desk.page(), desk.clock()).register(routes);
        new SearchPages(record, desk.page(), desk.clock()).register(routes);
    }

    private void prepare(Routes routes) {
        new PreparePages(desk).register(routes);
        new MotorPages(desk).register(routes);
        new PracticePages(desk).register(routes);
        new PeoplePages(desk).register(routes);
        new FilePages(desk).register(routes);
        new ExportPages(desk).register(routes);
        new ResultFilePages(desk).register(routes);
        new HistoryPages(desk).register(routes);
    }

    private void paper(Routes routes) {
        new PaperPages(desk.record(), desk.forms(), desk.page(), desk.clock(), address).register(routes);
        new GuidePages(desk.page(), Guide.ALL).register(routes);
        new AuditPages(desk.record(), desk.page(), desk.clock()).register(routes);
        new KeyInPages(desk.record(), desk.forms(), desk.page(), desk.clock()).register(routes);
    }
}
