using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class ResinComparisonWordsTests
{
    private static readonly InfusionPlan Plan = new() { Goals = new Goals { SmallestGelMarginRatio = 1.5 }, Vents = { new Vent { Name = "V1" } } };

    private static ResinOnPlan Fills(string name, double fillS, double gelS, bool meets) => new()
    {
        Name = name,
        MeetsGoals = meets,
        SharesFlow = true,
        ResinToMixG = 396,
        ViscosityAtOpeningPaS = 0.2,
        ViscosityAtEndPaS = 0.31,
        Forecast = new FillForecast
        {
            Outcome = Outcome.Fills,
            FillTimeS = fillS,
            EndTimeS = fillS,
            GelTimeS = gelS,
            SpareTimeS = gelS - fillS,
            GelMarginRatio = gelS / fillS,
            FilledFraction = 1,
            Likely = new LikelyBand { FillTimeFromS = fillS / 1.5, FillTimeToS = fillS * 1.5 },
        },
    };

    private static ResinOnPlan Gels(string name) => new()
    {
        Name = name,
        SharesFlow = true,
        ViscosityAtOpeningPaS = 0.2,
        Forecast = new FillForecast { Outcome = Outcome.GelsFirst, GelTimeS = 600, EndTimeS = 600, GelMarginRatio = 0.4, FilledFraction = 0.63, Likely = new LikelyBand() },
    };

    [Fact]
    public void Lines_TwoMeetTheGoals_NameTheQuickest()
    {
        var answer = new CompareResinsResponse { Resins = { Fills("Calm", 1800, 6000, true), Fills("Quick", 1200, 2700, true), Gels("Hasty") }, BestIndex = 1 };

        IReadOnlyList<FillLine> lines = ResinComparisonWords.Lines(Plan, answer);

        lines.Select(line => line.Label).ShouldBe(["Best", "Flow"]);
        lines[0].Text.ShouldBe(
            "Quick, the quickest to fill of the 2 that meet the goals: full 20 min after opening (two shots in three: 13 to 30 min); gel at 45 min, 25 min to spare, 15 min in the slow case; mix 396 g");
        lines[1].Text.ShouldBe("followed once for all 3 resins: the same picture, other minutes");
    }

    [Fact]
    public void Lines_NoneMeetsTheGoals_NameTheNearestAndWhy()
    {
        var answer = new CompareResinsResponse { Resins = { Gels("Hasty"), Fills("Calm", 1800, 2160, false) } };

        ResinComparisonWords.Lines(Plan, answer)[0].ShouldBe(new FillLine("None", "no resin meets the goals; Calm comes nearest: time to gel is 1.2 times the time to fill; you ask for 1.5"));
    }

    [Fact]
    public void Lines_OneThatGels_SayHowFarItGets()
    {
        FillLine line = ResinComparisonWords.Lines(Plan, new CompareResinsResponse { Resins = { Gels("Hasty") } })[0];

        line.Text.ShouldStartWith("Hasty does not meet the goals: GELS FIRST, solid 10 min after opening with 63 % of the cloth full");
    }

    [Fact]
    public void Lines_FlowFollowedAgain_SayForWhomAndWhy()
    {
        ResinOnPlan heavy = Fills("Heavy", 1800, 6000, true);
        (heavy.SharesFlow, heavy.FlowAgainBecause) = (false, ResinComparisonWords.Because(Planning.Resins.FlowSharing.AgainForWeight, 0));
        var answer = new CompareResinsResponse { Resins = { Fills("Calm", 1700, 6000, true), heavy }, BestIndex = 0 };

        ResinComparisonWords.Lines(Plan, answer)[^1].Text.ShouldBe("followed again for Heavy: its weight counts on a slope or with a pot at another level, and its density is another");
    }

    [Fact]
    public void Lines_CardThatKnowsTemperature_SayTheBestOne()
    {
        ResinOnPlan calm = Fills("Calm", 1800, 6000, true), quick = Fills("Quick", 1200, 2700, true);
        calm.BestTemperature = new BestTemperature { Found = true, TemperatureDegC = 27.34, FillTimeS = 1500, GelMarginRatio = 1.5, LowestDegC = 15, HighestDegC = 40 };
        quick.BestTemperature = new BestTemperature { TemperatureDegC = 15, GelMarginRatio = 1.2, LowestDegC = 15, HighestDegC = 30 };

        IReadOnlyList<FillLine> lines = ResinComparisonWords.Lines(Plan, new CompareResinsResponse { Resins = { calm, quick }, BestIndex = 1 });

        lines[1].ShouldBe(new FillLine(
            "Warmth", "Calm: quickest to fill at 27.3 °C with the margin you ask for (1.5): 25 min, time to gel 1.5 times the time to fill; looked at 15 to 40 °C"));
        lines[2].ShouldBe(new FillLine(
            "", "Quick: keeps the margin you ask for (1.5) at no temperature; nearest at 15 °C, time to gel 1.2 times the time to fill; looked at 15 to 30 °C"));
        lines[3].Text.ShouldStartWith("warm resin heats itself sooner in the pot");
    }

    [Fact]
    public void Lines_CardThatBoils_SayThatThisIsTheLimit()
    {
        ResinOnPlan some = Fills("Some", 1800, 6000, true), all = Fills("All", 1200, 2700, true);
        some.BestTemperature = new BestTemperature
        {
            Found = true,
            TemperatureDegC = 32.1,
            FillTimeS = 1500,
            GelMarginRatio = 1.8,
            LowestDegC = 15,
            HighestDegC = 32.1,
            IsBoundByBoiling = true,
        };
        all.BestTemperature = new BestTemperature { TemperatureDegC = 15, GelMarginRatio = 1.8, LowestDegC = 15, HighestDegC = 30, IsBoundByBoiling = true, BoilsThroughout = true };

        IReadOnlyList<FillLine> lines = ResinComparisonWords.Lines(Plan, new CompareResinsResponse { Resins = { some, all }, BestIndex = 1 });

        lines[1].Text.ShouldBe(
            "Some: quickest to fill at 32.1 °C, as warm as it may be without boiling, with the margin you ask for (1.5): 25 min, time to gel 1.8 times the time to fill; "
            + "looked at 15 to 32.1 °C; warmer, it may boil under this vacuum");
        lines[2].Text.ShouldBe("All: may boil under this vacuum at every temperature of the card; looked at 15 to 30 °C. Ask for a weaker vacuum");
    }

    [Theory]
    [InlineData(0.2, 0.31, "0.20 to 0.31 Pa·s")]
    [InlineData(0.2, 0.2, "0.20 Pa·s")]
    public void Viscosity_FromOpeningToTheEnd_IsSaidOnceWhereItStays(double opening, double end, string said) =>
        ResinComparisonWords.Viscosity(new ResinOnPlan { ViscosityAtOpeningPaS = opening, ViscosityAtEndPaS = end }).ShouldBe(said);

    [Fact]
    public void Viscosity_ThatEndsInGel_SaysSo() =>
        ResinComparisonWords.Viscosity(new ResinOnPlan { ViscosityAtOpeningPaS = 0.2 }).ShouldBe("0.20 Pa·s to solid");
}
