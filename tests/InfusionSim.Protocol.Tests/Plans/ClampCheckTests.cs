using InfusionSim.Physics.Clamps;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;
using Moment = InfusionSim.Protocol.V1.Moment;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class ClampCheckTests
{
    private static readonly Dictionary<string, Action<InfusionPlan>> Slips = new()
    {
        ["nothing"] = plan => plan.Feeds[1].Opens = new Moment(),
        ["notFull"] = plan => plan.Feeds[1].Opens = new Moment { WhenFull = false },
        ["two"] = plan => plan.Feeds[1].Opens = new Moment { AtMin = 5, WhenReached = "M1" },
        ["unknown"] = plan => plan.Feeds[1].Opens = new Moment { WhenReached = "M11" },
        ["feed"] = plan => plan.Feeds[1].Opens = new Moment { WhenReached = "F1" },
        ["far"] = plan => plan.Feeds[1].Opens = new Moment { WhenReached = "quarter way" },
        ["both"] = plan => (plan.TimingMarks[0].Name, plan.Feeds[1].Opens) = ("V1", new Moment { WhenReached = "V1" }),
        ["noMoment"] = plan => plan.Vents[0].ClampSteps.Add(new V1.ClampStep { OpenFraction = 0 }),
        ["noHose"] = plan => plan.Feeds[0].OpenFraction = 0.3,
        ["noHoseStep"] = plan => plan.Vents[0].ClampSteps.Add(new V1.ClampStep { When = new Moment { AtMin = 5 }, OpenFraction = 0.5 }),
        ["shutFirst"] = plan => (plan.Feeds[1].Opens, plan.Feeds[1].Shuts) = (new Moment { AtMin = 10 }, new Moment { AtMin = 5 }),
        ["shutAtOnce"] = plan => plan.Vents[0].Shuts = new Moment { AtMin = 0 },
        ["oneMoment"] = plan => (plan.Feeds[1].Opens, plan.Feeds[1].Shuts) = (new Moment { WhenReached = "M1" }, new Moment { WhenReached = "M1" }),
        ["allShut"] = plan => plan.Feeds[0].Opens = plan.Feeds[1].Opens = new Moment { AtMin = 5 },
        ["itself"] = plan => plan.Vents[0].Opens = new Moment { WhenReached = "V1" },
        ["circle"] = plan => (plan.Vents[0].Opens, plan.Vents[1].Opens) = (new Moment { WhenReached = "V2" }, new Moment { WhenReached = "V1" }),
        ["noVacuum"] = plan => plan.Bag.Steps.Add(new V1.BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 1050 }),
        ["sameStep"] = plan => plan.Bag.Steps.Add(
        [
            new V1.BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 500 },
            new V1.BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 300 },
        ]),
        ["gauge"] = plan => plan.Bag.Steps.Add(new V1.BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = -500 }),
    };

    public static TheoryData<string, string, string> Bad => new()
    {
        { "nothing", "feeds[1].opens", "feeds[1].opens names no moment; give atMin, whenReached or whenFull, for example \"whenReached\": \"M1\"." },
        { "notFull", "feeds[1].opens", "feeds[1].opens names no moment; give atMin, whenReached or whenFull, for example \"whenReached\": \"M1\"." },
        { "two", "feeds[1].opens", "feeds[1].opens gives atMin and whenReached; give one of them." },
        { "unknown", "feeds[1].opens.whenReached", "feeds[1].opens.whenReached is 'M11', and no timing mark or vent is called so; did you mean 'M1'?" },
        { "feed", "feeds[1].opens.whenReached", "feeds[1].opens.whenReached is 'F1', a feed: resin comes from there. Name a timing mark or a vent." },
        { "far", "feeds[1].opens.whenReached", "feeds[1].opens.whenReached is 'quarter way', and no timing mark or vent is called so; there are 'M1', 'V1', 'V2'." },
        { "both", "feeds[1].opens.whenReached", "feeds[1].opens.whenReached is 'V1', and both a timing mark and a vent are called so; give one of them another name." },
        { "noMoment", "vents[0].clampSteps[0].when", "vents[0].clampSteps[0].when names no moment; give atMin, whenReached or whenFull, for example \"whenReached\": \"M1\"." },
        { "noHose", "feeds[0].openFraction", "feeds[0].openFraction is 0.3, but feed 'F1' has no hose: it is the share of the hose's conductance that the clamp leaves. Give feeds[0].hose, or leave openFraction out." },
        { "noHoseStep", "vents[0].clampSteps[0].openFraction", "vents[0].clampSteps[0].openFraction is 0.5, but vent 'V1' has no hose: it is the share of the hose's conductance that the clamp leaves. Give vents[0].hose, or leave openFraction out." },
        { "shutFirst", "feeds[1].shuts", "feed 'F2' shuts at 5 min, before it opens at 10 min. Let it shut later, or take clampSteps for a line that is open at first." },
        { "shutAtOnce", "vents[0].shuts", "vent 'V1' shuts at 0 min, as the first feed opens: it would never be open. Leave it out of the plan, or let it shut later." },
        { "oneMoment", "feeds[1].shuts", "feeds[1].shuts and feeds[1].opens name one moment: feed 'F2' cannot be set twice at once. Leave one of them out." },
        { "allShut", "feeds", "no feed is open at the start: every one of them waits to be opened. Leave opens out of the feed that opens first; all times count from that moment." },
        { "itself", "vents[0].opens", "V1 opens when resin shows in V1: it waits for itself, and a shut vent shows no resin. Let one of them wait for a timing mark or a minute." },
        { "circle", "vents[0].opens", "V1 opens when resin shows in V2, V2 opens when resin shows in V1: they wait for each other, and a shut vent shows no resin. Let one of them wait for a timing mark or a minute." },
        { "noVacuum", "bag.steps[0].pressureMbarAbs", "bag.steps[0].pressureMbarAbs is 1050 mbar, not below the air around the bag (1013.25 mbar): nothing holds the bag down any more." },
        { "sameStep", "bag.steps[1]", "bag.steps[1] and bag.steps[0] name one moment: the vacuum cannot be set twice at once. Leave one of them out." },
        { "gauge", "bag.steps[0].pressureMbarAbs", "bag.steps[0].pressureMbarAbs is -500 mbar; it must lie between 0 and 1100 mbar. That reads like a gauge: with 1013.25 mbar of air the absolute pressure is 513.25 mbar." },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Check_RuleThatCannotBe_SaysWhatAndWhatToDo(string slip, string path, string text)
    {
        IReadOnlyList<Fault> faults = PlanChecker.Check(Clamped(Slips[slip])).Faults;

        faults.ShouldHaveSingleItem().ShouldBe(new Fault(path, text));
    }

    [Fact]
    public void Check_LineThatWaitsForAMarkOnlyItCouldReach_IsAForecast() =>
        PlanChecker.Check(Clamped(plan => (plan.TimingMarks[0].At, plan.Feeds[1].Opens) = (At(590, 10), new Moment { WhenReached = "M1" }))).Faults.ShouldBeEmpty();

    [Fact]
    public void Check_ClampsOnASlope_AreSound() =>
        PlanChecker.Check(Clamped(plan => (plan.Slope, plan.Feeds[1].Opens) = (new Slope { AngleDeg = 20 }, new Moment { WhenReached = "M1" }))).Faults.ShouldBeEmpty();

    [Fact]
    public void Check_VentThatWaitsForAVentThatIsOpen_IsNoCircle() =>
        PlanChecker.Check(Clamped(plan => (plan.Vents[0].Opens, plan.Vents[1].Shuts) = (new Moment { WhenReached = "V2" }, new Moment { WhenReached = "V1" }))).Faults.ShouldBeEmpty();

    [Fact]
    public void Check_FeedThatOpensAtZero_IsTheFirst() =>
        PlanChecker.Check(Clamped(plan => (plan.Feeds[0].Opens, plan.Feeds[1].Opens) = (new Moment { AtMin = 0 }, new Moment { AtMin = 5 }))).Faults.ShouldBeEmpty();

    [Fact]
    public void ToInputs_ClampsPotsAndSteps_TurnEveryUnitIntoSi()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(Clamped(plan =>
        {
            plan.Feeds[1].Opens = new Moment { WhenReached = "M1" };
            plan.Feeds[1].Shuts = new Moment { AtMin = 20 };
            plan.Feeds[1].Hose = new Hose { BoreMm = 8, LengthM = 1 };
            plan.Feeds[1].OpenFraction = 0.4;
            plan.Feeds[1].ClampSteps.Add(new V1.ClampStep { When = new Moment { AtMin = 10 }, OpenFraction = 1 });
            plan.Feeds[0].Pot = "P1";
            plan.Pots.Add(new Pot { Name = "P1", MassG = 350 });
            plan.Vents[0].Shuts = new Moment { WhenReached = "V1" };
            plan.Bag.Steps.Add(new V1.BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 500 });
        })));

        inputs.Panel.Feeds[0].Clamp.ShouldBe(Clamp.AlwaysOpen);
        Clamp second = inputs.Panel.Feeds[1].Clamp;
        second.OpenAtStart.ShouldBe(0);
        second.Steps.ShouldBe([new(new WhenReached("M1"), 0.4), new(new AtTime(1200), 0), new(new AtTime(600), 1)]);
        inputs.Panel.Vents[0].Clamp.OpenAtStart.ShouldBe(1);
        inputs.Panel.Vents[0].Clamp.Steps.ShouldBe([new(new WhenReached("V1"), 0)]);
        inputs.Panel.Pots[0].Mass.ShouldBe(0.35);
        inputs.Bag.Steps.ShouldBe([new(new WhenFull(), 50_000)]);
    }

    [Fact]
    public void ToInputs_ThrottledFromTheStart_IsOpenThatFar() =>
        PlanMapping.ToInputs(PlanChecker.Check(Clamped(plan => (plan.Feeds[0].Hose, plan.Feeds[0].OpenFraction) = (new Hose { BoreMm = 8, LengthM = 1 }, 0.25))))
            .Panel.Feeds[0].Clamp.OpenAtStart.ShouldBe(0.25);

    private static InfusionPlan Clamped(Action<InfusionPlan> change) => With(plan =>
    {
        plan.Feeds.Add(new Feed { Name = "F2", Path = PathOf((300, 0), (300, 100)) });
        plan.Vents.Add(new Vent { Name = "V2", Path = PathOf((450, 350)) });
        change(plan);
    });
}
