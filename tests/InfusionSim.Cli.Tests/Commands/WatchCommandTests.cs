using System.Text.Json;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class WatchCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Strip_Watched_ShowsMomentsAndThenTheAnswer()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("watch strip.json --moments 4")).ShouldBe(ExitCodes.Done, _session.Error);

        string[] lines = _session.Output.Split('\n');
        lines.Count(line => line.Contains("% full,", StringComparison.Ordinal)).ShouldBe(4);
        lines.ShouldContain(line => line.StartsWith("FILLS", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Strip_WatchedAsJson_IsOneMessageALine()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        await _session.RunAsync("watch strip.json --moments 3 --json");

        int sequence = 0;
        foreach (string line in _session.Output.TrimEnd().Split('\n'))
        {
            using JsonDocument document = JsonDocument.Parse(line);
            document.RootElement.GetProperty("sequence").GetInt32().ShouldBe(++sequence);
        }

        sequence.ShouldBeGreaterThan(3);
    }

    [Fact]
    public async Task Moments_TooMany_AreRefused()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("watch strip.json --moments 5000")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("200");
    }

    [Fact]
    public async Task ByHand_FeedShutHalfWay_StopsThereAndSaysSo()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        _session.Typed = "\nshut F1\n";
        (await _session.RunAsync("watch strip.json --moments 4 --by-hand")).ShouldBe(ExitCodes.GoalsNotMet, _session.Error);

        // Source: the way goes with the root of time, so half the time is √½ of a strip.
        _session.Output.Split('\n').Last(line => line.Contains("% full,", StringComparison.Ordinal)).ShouldContain("71 % full");
        _session.Output.ShouldContain("STOPS SHORT");
        _session.Output.ShouldContain("every feed is shut by");
        _session.Output.ShouldContain("F1 shuts at");
        _session.Error.ShouldContain("By hand: F1 shut at");
    }

    [Fact]
    public async Task ByHand_NothingTyped_IsTheSameAsWatching()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");
        await _session.RunAsync("watch strip.json --moments 4");
        string watched = _session.Output;

        _session.Typed = "\n\n\n\n";
        (await _session.RunAsync("watch strip.json --moments 4 --by-hand")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldBe(watched);
    }

    [Theory]
    [InlineData("shut F7", "no feed or vent is called 'F7'. Did you mean F1?")]
    [InlineData("close F1", "'close F1' is not understood. Enter for the next moment, open F2, open F2 0.3, shut V1, stop.")]
    [InlineData("open F1 30", "'30' is no share between 0 and 1. Write for example open F1 0.3, or shut F1.")]
    [InlineData("open F1 0.3", "feed 'F1' has no hose")]
    public async Task ByHand_WhatCannotBeDone_IsSaidAndAskedAgain(string typed, string says)
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        _session.Typed = typed + "\nstop\n";
        (await _session.RunAsync("watch strip.json --moments 2 --by-hand")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Error.ShouldContain(says);
        _session.Error.ShouldNotContain("By hand:");
    }

    [Fact]
    public async Task ByHand_AsJson_IsRefused()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("watch strip.json --by-hand --json")).ShouldBe(ExitCodes.BadInput);
    }

    public void Dispose() => _session.Dispose();
}
