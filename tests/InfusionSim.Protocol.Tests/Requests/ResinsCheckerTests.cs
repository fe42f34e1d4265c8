using System.Text;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Requests;

public sealed class ResinsCheckerTests
{
    private static Resin Card(Action<Resin>? change = null)
    {
        var card = new Resin { ViscosityPaS = 0.3, GelTimeMin = 90, DensityKgPerM3 = 1150 };
        change?.Invoke(card);
        return card;
    }

    private static CompareResinsRequest Request(params Resin[] cards) => new() { Plan = StraightStrip.Plan(), Cards = { cards } };

    [Fact]
    public void Check_SoundCards_GivesThePlanWithEachInTurn()
    {
        ResinsCheck check = ResinsChecker.Check(Request(Card(), Card(card => card.ViscosityPaS = 0.4)));

        check.IsSound.ShouldBeTrue(string.Join("; ", check.Faults));
        check.Cards.Select(card => card.Plan.Resin.ViscosityPaS).ShouldBe([0.3, 0.4]);
        check.Cards.Select(card => card.Plan.Title).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public void Check_PlanWithoutAResin_IsSound()
    {
        CompareResinsRequest request = Request(Card());
        request.Plan.Resin = null;

        ResinsChecker.Check(request).IsSound.ShouldBeTrue();
    }

    [Fact]
    public void Check_BadNumberOfOneCard_IsNamedByItsPlace()
    {
        ResinsCheck check = ResinsChecker.Check(Request(Card(), Card(card => card.ViscosityPaS = 300), Card(card => card.ClearDensityKgPerM3())));

        check.Faults.Select(fault => fault.Path).ShouldBe(["cards[1].viscosityPaS", "cards[2].densityKgPerM3"]);
        check.Faults[0].Text.ShouldStartWith("cards[1].viscosityPaS is 300 Pa·s");
    }

    [Fact]
    public void Check_FaultOfThePlan_IsSaidOnce()
    {
        CompareResinsRequest request = Request(Card(), Card(), Card());
        request.Plan.Preform.Zones[0].Porosity = 1.2;

        ResinsChecker.Check(request).Faults.Select(fault => fault.Path).ShouldBe(["preform.zones[0].porosity"]);
    }

    [Fact]
    public void Check_NoCards_SaysHowManyThereMayBe() =>
        ResinsChecker.Check(Request()).Faults.ShouldHaveSingleItem().Text.ShouldBe("cards is empty: there is no resin to compare; give 1 to 20.");

    [Fact]
    public void Check_MoreCardsThanAreCompared_IsTooLarge()
    {
        Fault fault = ResinsChecker.Check(Request([.. Enumerable.Range(0, 21).Select(_ => Card())])).Faults.ShouldHaveSingleItem();

        (fault.Path, fault.Reason).ShouldBe(("cards", ErrorReason.TooLarge));
        fault.Text.ShouldContain("at most 20");
    }

    [Fact]
    public void Check_MisspeltKeyInACard_IsNamedOnceAndTheRestIsCheckedToo()
    {
        const string Json = """
            { "plan": {}, "cards": [ { "viscosityPaS": 0.3, "gelTimeMin": 90, "densityKgPerM3": 1150 }, { "viscosity": 0.3, "gelTimeMin": -5, "densityKgPerM3": 1150 } ] }
            """;
        var request = new CompareResinsRequest();
        IReadOnlyList<Fault> found = MessageReader.ReadInto(request, Encoding.UTF8.GetBytes(Json), "request");
        request.Plan = StraightStrip.Plan();

        IReadOnlyList<Fault> faults = ResinsChecker.Check(request, found).Faults;

        faults.Select(fault => fault.Path).ShouldBe(["cards[1].viscosity", "cards[1].viscosityPaS", "cards[1].gelTimeMin"], ignoreOrder: true);
        faults.First(fault => fault.Path == "cards[1].viscosity").Text.ShouldContain("did you mean 'viscosityPaS'?");
    }
}
