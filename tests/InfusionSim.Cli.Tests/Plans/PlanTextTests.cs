using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Shapes;

namespace InfusionSim.Cli.Tests.Plans;

public sealed class PlanTextTests
{
    private static readonly string[] Order = ["title", "preform", "feeds", "vents", "timingMarks", "resin", "bag", "goals"];

    [Fact]
    public void Plate_Text_IsShortAndInTheOrderOfTheContract()
    {
        string text = PlanText.Of(FirstPlan.Of("plate", "600x400"));

        text.Split('\n').Length.ShouldBeLessThan(45);
        text.Split('\n').ShouldAllBe(line => line.Length <= 120);
        int[] places = [.. Order.Select(key => text.IndexOf($"\"{key}\"", StringComparison.Ordinal))];
        places.ShouldAllBe(place => place >= 0);
        places.ShouldBeInOrder();
    }

    [Fact]
    public void Numbers_WithAPowerOfTen_AreWrittenAsPeopleDo() =>
        PlanText.Of(FirstPlan.Of("plate", "600x400")).ShouldContain("\"k1M2\": 1e-10");

    [Fact]
    public void Circle_ManyCorners_StandSeveralOnALine() =>
        PlanText.Of(FirstPlan.Of("disc", "500")).Split('\n').Length.ShouldBeLessThan(80);
}
