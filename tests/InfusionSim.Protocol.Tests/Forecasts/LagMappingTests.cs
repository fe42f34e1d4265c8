using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Forecasts;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Forecasts;

public sealed class LagMappingTests
{
    [Fact]
    public void ToContract_LagUnderAMesh_IsSaidInMinutesAndMillimetres() =>
        LagMapping.ToContract(new LagForecast(90, new Point2(0.3, 0.2), 0.0455, 0.046, 0.02) { StopBeforeVent = 0.046 }).ShouldBe(new Contract.Lag
        {
            LargestMin = 1.5,
            At = new Contract.Point { XMm = 300, YMm = 200 },
            LengthMm = 45.5,
            StopMeshBeforeVentMm = 46,
            MeshToVentMm = 20,
        });

    [Fact]
    public void ToContract_ToolSideNowhereBehind_LeavesOutWhatDoesNotExist() =>
        LagMapping.ToContract(new LagForecast(0, null, null, double.PositiveInfinity, null)).ShouldBe(new Contract.Lag { LargestMin = 0 });
}
