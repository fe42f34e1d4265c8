using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class DrawingCheckTests
{
    private static Fault OnlyFault(Action<InfusionPlan> change) => PlanChecker.Check(With(change)).Faults.ShouldHaveSingleItem();

    [Fact]
    public void Check_OutlineInMetres_SaysThatLengthsAreMillimetres()
    {
        IReadOnlyList<Fault> faults = PlanChecker.Check(With(plan => plan.Preform.Outline = RingOf((0, 0), (1.2, 0), (1.2, 0.6), (0, 0.6)))).Faults;

        faults[0].ShouldBe(new Fault("preform.outline", "outline is 1.2 mm wide; lengths are millimetres: 1.2 m is 1200."));
    }

    [Fact]
    public void Check_OutlineThatCrossesItself_SaysWhere() =>
        OnlyFault(plan => plan.Preform.Outline = RingOf((0, 0), (600, 400), (600, 0), (0, 400)))
            .Text.ShouldBe("preform.outline crosses or touches itself at (300, 200) mm; give its corners in order, once round.");

    [Fact]
    public void Check_OutlineOnALine_SaysThatItHasNoArea() =>
        OnlyFault(plan => plan.Preform.Outline = RingOf((0, 0), (300, 0), (600, 0))).Text.ShouldContain("encloses no area");

    [Theory]
    [InlineData(700, "lies outside the outline")]
    [InlineData(0, "touches or crosses the outline")]
    [InlineData(550, "touches or crosses the outline")]
    public void Check_CutoutThatIsNotInside_SaysSo(double left, string words) =>
        OnlyFault(plan => plan.Preform.Cutouts.Add(RingOf((left, 100), (left + 100, 100), (left + 100, 250), (left, 250)))).Text.ShouldContain(words);

    [Fact]
    public void Check_FeedOutside_SaysHowFarAndWhereTheClothIs() =>
        OnlyFault(plan => plan.Feeds[0].Path = PathOf((-50, 100), (-50, 300))).Text.ShouldBe(
            "feed 'F1', point 1, at (-50, 100) mm lies 50 mm outside the cloth; it must touch the cloth. The nearest place on its edge is (0, 100) mm.");

    [Fact]
    public void Check_VentInACutout_NamesTheCutout() => OnlyFault(plan =>
    {
        plan.Preform.Cutouts.Add(RingOf((400, 100), (500, 100), (500, 300), (400, 300)));
        plan.Vents[0].Path = PathOf((450, 140));
    }).Text.ShouldBe("vent 'V1' at (450, 140) mm lies 40 mm inside preform.cutouts[0]; it must touch the cloth. The nearest place on its edge is (450, 100) mm.");

    [Fact]
    public void Check_LineADashOffTheEdge_StillLiesOnIt() =>
        PlanChecker.Check(With(plan => plan.Feeds[0].Path = PathOf((-0.9, 0), (-0.9, 400)))).IsSound.ShouldBeTrue();

    [Fact]
    public void Check_LineAcrossACutout_Warns()
    {
        PlanCheck check = PlanChecker.Check(With(plan =>
        {
            plan.Preform.Cutouts.Add(RingOf((50, 100), (150, 100), (150, 300), (50, 300)));
            plan.Feeds[0].Path = PathOf((100, 20), (100, 380));
        }));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldHaveSingleItem().ShouldBe("feed 'F1' leaves the cloth near (100, 200) mm; there it touches nothing.");
    }

    [Theory]
    [InlineData(0, 200, 600, 200)]
    [InlineData(0, 100, 0, 150)]
    [InlineData(0, 400, 600, 400)]
    public void Check_VentOnAFeed_IsRefused(double x1, double y1, double x2, double y2)
    {
        Fault fault = OnlyFault(plan => plan.Vents[0].Path = PathOf((x1, y1), (x2, y2)));

        fault.Path.ShouldBe("vents[0].path");
        fault.Text.ShouldContain("touches feed 'F1'");
    }

    [Fact]
    public void Check_VentBesideAFeed_Warns() =>
        PlanChecker.Check(With(plan => plan.Vents[0].Path = PathOf((8, 0), (8, 400)))).Warnings.ShouldHaveSingleItem().ShouldContain("8 mm from feed 'F1'");

    [Fact]
    public void Check_FittingsThatOverlap_AreRefused() => OnlyFault(plan =>
    {
        plan.Feeds[0].Path = PathOf((300, 200));
        plan.Vents[0].Path = PathOf((310, 200));
    }).Path.ShouldBe("vents[0].path");

    [Fact]
    public void Check_LineOfNoLength_AsksForAFittingOrALine() =>
        OnlyFault(plan => plan.Feeds[0].Path = PathOf((0, 10), (0, 10))).Text.ShouldContain("a line of no length");

    [Fact]
    public void Check_MarkOutside_IsRefused() =>
        OnlyFault(plan => plan.TimingMarks[0].At = At(300, 500)).Text.ShouldContain("timing mark 'M1' at (300, 500) mm lies 100 mm outside the cloth");

    [Fact]
    public void Check_ZonesThatLeaveAPlaceOpen_SayWhere()
    {
        Fault fault = OnlyFault(plan => plan.Preform.Zones[0].Area = RingOf((0, 0), (300, 0), (300, 400), (0, 400)));

        fault.Path.ShouldBe("preform.zones");
        fault.Text.ShouldStartWith("preform.zones leave 0.12 m² of the cloth without a lay-up, at (450, 200) mm for one.");
    }

    [Fact]
    public void Check_ZonesThatMeetAtASeam_CoverThePreform() => PlanChecker.Check(With(plan =>
    {
        Zone second = plan.Preform.Zones[0].Clone();
        second.Name = "core";
        plan.Preform.Zones[0].Area = RingOf((0, 0), (200.1, 0), (333.3, 400), (0, 400));
        second.Area = RingOf((200.1, 0), (700, 0), (700, 500), (333.3, 400));
        plan.Preform.Zones.Add(second);
        plan.Preform.Zones[1].Area.Points[2] = At(700, 400);
    })).Faults.ShouldBeEmpty();

    [Fact]
    public void Check_WholePreformNamedLast_WarnsThatItDecidesAlone() => PlanChecker.Check(With(plan =>
    {
        Zone first = plan.Preform.Zones[0].Clone();
        first.Name = "patch";
        first.Area = RingOf((0, 0), (100, 0), (100, 100));
        plan.Preform.Zones.Insert(0, first);
    })).Warnings.ShouldHaveSingleItem().ShouldContain("Name it first");

    [Fact]
    public void Check_ZoneAreaThatCrossesItself_NamesTheZone() =>
        OnlyFault(plan => plan.Preform.Zones[0].Area = RingOf((0, 0), (600, 400), (600, 0), (0, 400))).Path.ShouldBe("preform.zones[0].area");
}
