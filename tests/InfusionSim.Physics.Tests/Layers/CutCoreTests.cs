using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Layers;

public sealed class CutCoreTests
{
    private static Core Of(CoreGrooves? grooves, CoreHoles? holes, double thickness = 0.015) => CutCore.Of("core", null, 0.5, thickness, grooves, holes);

    [Fact]
    public void Of_SquareGrooves_CarryTheTabledTransmissibility()
    {
        Core core = Of(new CoreGrooves(0.002, 0.002, 0.02, 0.3, BothWays: false), null);

        // Square duct, K/a² = 0.03514425 (White, from memory): T = K a²/P = 2.811540e-11 m³ for 2 × 2 mm every 20 mm.
        (core.Permeability.K1 * 0.015).ShouldBe(2.811540e-11, 1e-6 * 2.811540e-11);
        core.Permeability.K2.ShouldBe(core.Permeability.K1 / 100, 1e-24);
        // The mouths of the grooves lie open to the skins.
        core.Permeability.K3.ShouldBe(0.1 * 0.03514425 * 4e-6, 1e-14);
        core.Permeability.Angle.ShouldBe(0.3);
        core.Porosity.ShouldBe(0.1 * 2 / 15, 1e-12);
    }

    [Fact]
    public void Of_GroovesBothWays_AreAlikeInBothAndShareTheirCrossings()
    {
        Core core = Of(new CoreGrooves(0.002, 0.002, 0.02, 0, BothWays: true), null);

        core.Permeability.K2.ShouldBe(core.Permeability.K1);
        core.Porosity.ShouldBe((2 * 0.1 - 0.01) * 2 / 15, 1e-12);
    }

    [Fact]
    public void Of_Holes_JoinTheSkinsLikeSoManyTubes()
    {
        Core core = Of(null, new CoreHoles(0.003, 0.04));

        // One tube of πr⁴/8 for each square of the pitch.
        core.Permeability.K3.ShouldBe(Math.PI * Math.Pow(0.0015, 4) / 8 / (0.04 * 0.04), 1e-20);
        core.Permeability.K1.ShouldBe(0);
        core.Permeability.K2.ShouldBe(0);
        core.Porosity.ShouldBe(Math.PI * 0.0015 * 0.0015 / (0.04 * 0.04), 1e-12);
    }

    [Fact]
    public void Of_GroovesAndHoles_AddUp()
    {
        Core both = Of(new CoreGrooves(0.002, 0.002, 0.02, 0, BothWays: true), new CoreHoles(0.003, 0.04));

        both.Permeability.K1.ShouldBe(Of(new CoreGrooves(0.002, 0.002, 0.02, 0, BothWays: true), null).Permeability.K1);
        both.Permeability.K3.ShouldBe(Of(null, new CoreHoles(0.003, 0.04)).Permeability.K3);
        both.Porosity.ShouldBeInRange(0.0253, 0.0253 + 0.0045);
    }
}
