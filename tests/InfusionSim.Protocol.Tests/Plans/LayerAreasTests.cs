using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.RealLayUp;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class LayerAreasTests
{
    [Fact]
    public void Check_MeshThatReachesBeyondTheCloth_Warns() =>
        PlanChecker.Check(StraightStrip.With(plan =>
        {
            plan.FlowMeshes.Add(Mesh());
            plan.FlowMeshes[0].Area = StraightStrip.RingOf((500, 0), (700, 0), (700, 400), (500, 400));
        })).Warnings.ShouldHaveSingleItem().ShouldBe("flow mesh 'Mesh1' reaches beyond the cloth with 50 % of its area; what lies beside the cloth does not count.");

    [Fact]
    public void Check_MeshesThatOverlapOnOneSide_Warn()
    {
        InfusionPlan plan = StraightStrip.With(given =>
        {
            given.FlowMeshes.Add([Mesh(), Mesh(), Mesh()]);
            given.FlowMeshes[1].Area = null;
            given.FlowMeshes[2].Face = PanelFace.ToolSide;
        });

        PlanChecker.Check(plan).Warnings.ShouldHaveSingleItem().ShouldBe(
            "flow meshes on the bag side 'Mesh1' and 'Mesh2' overlap; where they do the one named last, 'Mesh2', decides alone.");
    }

    [Fact]
    public void Check_MeshesThatMeetAtASeam_DoNotWarn() =>
        PlanChecker.Check(StraightStrip.With(plan =>
        {
            plan.FlowMeshes.Add([Mesh(), Mesh()]);
            plan.FlowMeshes[1].Area = StraightStrip.RingOf((500, 0), (600, 0), (600, 400), (500, 400));
        })).Warnings.ShouldBeEmpty();

    [Fact]
    public void Check_PotThatServesNoFeed_Warns() =>
        PlanChecker.Check(StraightStrip.With(plan => plan.Pots.Add(new Pot { Name = "spare" }))).Warnings.ShouldHaveSingleItem().ShouldBe(
            "pot 'spare' serves no feed; name it in the pot of a feed, or take it out.");
}
