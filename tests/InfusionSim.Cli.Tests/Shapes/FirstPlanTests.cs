using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Shapes;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Tests.Shapes;

public sealed class FirstPlanTests
{
    public static TheoryData<string, string> Examples
    {
        get
        {
            TheoryData<string, string> examples = [];
            foreach (PanelShape shape in PanelShapes.All) examples.Add(shape.Name, shape.Example);
            return examples;
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Shape_OfItsExampleSize_IsASoundPlan(string shape, string size)
    {
        PlanCheck check = PlanChecker.Check(FirstPlan.Of(shape, size));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Shape_WithAMesh_IsASoundPlan(string shape, string size)
    {
        InfusionPlan plan = FirstPlan.Of(shape, size);
        FirstPlan.LayMesh(plan);

        PlanCheck check = PlanChecker.Check(plan);

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldBeEmpty();
        check.Plan.FlowMeshes.ShouldHaveSingleItem().Face.ShouldBe(PanelFace.BagSide);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Shape_WrittenAndRead_IsTheSamePlan(string shape, string size)
    {
        InfusionPlan plan = FirstPlan.Of(shape, size);

        PlanJson.Read(PlanText.Of(plan)).Message.ShouldBe(plan);
    }

    [Theory]
    [InlineData("600x400", 600, 400)]
    [InlineData("600 x 400", 600, 400)]
    [InlineData("600X400mm", 600, 400)]
    [InlineData("0.6m×0.4m", 600, 400)]
    [InlineData("60cmx0.4m", 600, 400)]
    public void Plate_SizeWithOrWithoutUnits_IsInMillimetres(string size, double width, double height)
    {
        Point corner = FirstPlan.Of("plate", size).Preform.Outline.Points[2];

        (corner.XMm, corner.YMm).ShouldBe((width, height));
    }

    [Fact]
    public void Plate_TallRatherThanWide_IsFedAlongItsLongEdge() =>
        FirstPlan.Of("plate", "400x900").Feeds[0].Path.Points[1].YMm.ShouldBe(900);

    [Theory]
    [InlineData("plat", "600x400", "Did you mean plate?")]
    [InlineData("banana", "600x400", "Shapes: plate, strip, disc, ring, corner, window.")]
    [InlineData("plate", "600", "a plate is written WIDTHxHEIGHT, for example 600x400")]
    [InlineData("plate", "600x400x3", "a plate is written WIDTHxHEIGHT")]
    [InlineData("plate", "600x-400", "must be above 0")]
    [InlineData("plate", "600kgx400", "'kg' measures a mass, and lengthMm is a length")]
    [InlineData("ring", "200x500", "inner diameter")]
    [InlineData("corner", "600x600x700", "must be narrower")]
    public void Shape_ThatCannotBeDrawn_SaysHowToWriteIt(string shape, string size, string says)
    {
        CommandException failure = Should.Throw<CommandException>(() => FirstPlan.Of(shape, size));

        failure.ExitCode.ShouldBe(ExitCodes.BadInput);
        failure.Message.ShouldContain(says);
    }
}
