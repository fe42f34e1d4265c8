using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Demo;
using InfusionSim.Cli.Plans;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class DemoCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public void Deck_BothLinePlans_AreSoundAndDifferInTheirLinesAlone()
    {
        PlanCheck first = PlanChecker.Check(SledDeck.First()), second = PlanChecker.Check(SledDeck.Second());

        first.Faults.ShouldBeEmpty();
        second.Faults.ShouldBeEmpty();
        first.Plan.Preform.ShouldBe(second.Plan.Preform);
        first.Plan.Resin.ShouldBe(second.Plan.Resin);
        first.Plan.Vents.ShouldNotBe(second.Plan.Vents);
    }

    [Theory]
    [InlineData("sled-deck-1")]
    [InlineData("sled-deck-2")]
    public void Gallery_PlansOfTheDemo_AreThoseOfTheDemo(string name) =>
        RepositoryFiles.Text($"plots/gallery/plans/{name}.json").ShouldBe(PlanText.Of(name.EndsWith('1') ? SledDeck.First() : SledDeck.Second()));

    [Fact]
    public async Task Demo_Run_ShowsTheFlawAndTheCure()
    {
        (await _session.RunAsync("demo -o infusionsim-demo")).ShouldBe(ExitCodes.Done, _session.Error);

        int first = _session.Output.IndexOf("FIRST LINE PLAN", StringComparison.Ordinal), second = _session.Output.IndexOf("SECOND LINE PLAN", StringComparison.Ordinal);
        _session.Output.IndexOf("TRAPS AIR", StringComparison.Ordinal).ShouldBeInRange(first, second);
        _session.Output.IndexOf("FILLS", StringComparison.Ordinal).ShouldBeGreaterThan(second);
        _session.Output.ShouldContain("WHAT THE SECOND LINE PLAN CHANGES");
        foreach (string name in new[] { "first.json", "second.json", "first-front.png", "second-front.png" })
            File.Exists(_session.PathOf(Path.Combine("infusionsim-demo", name))).ShouldBeTrue(name);
    }

    public void Dispose() => _session.Dispose();
}
