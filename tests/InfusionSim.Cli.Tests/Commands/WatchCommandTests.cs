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
    [InlineData("shut X", "no feed or vent is called 'X'. There are F1, V1.")]
    [InlineData("turn F1", "'turn F1' is not understood. Enter goes on to the next moment, open F1 or shut V1 turns a clamp, run goes on to the end, stop leaves.")]
    [InlineData("open F1 30", "'30' is no share above 0 and up to 1 (100%). Write for example open F1 0.3 or open F1 30%, or shut F1.")]
    [InlineData("open F1 130%", "'130%' is no share above 0")]
    [InlineData("open F1 30%", "openFraction is 0.3, but feed 'F1' has no hose")]
    [InlineData("open F1 0.3", "feed 'F1' has no hose")]
    public async Task ByHand_WhatCannotBeDone_IsSaidAndAskedAgain(string typed, string says)
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        _session.Typed = typed + "\nrun\n";
        (await _session.RunAsync("watch strip.json --moments 2 --by-hand")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Error.ShouldContain(says);
        _session.Error.ShouldNotContain("By hand:");
    }

    [Fact]
    public async Task ByHand_OnTheWay_TellsMarksVentsAndTurns()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        _session.Typed = "close F1\nopen F1\nrun\n";
        (await _session.RunAsync("watch strip.json --moments 2 --by-hand")).ShouldBe(ExitCodes.Done, _session.Error);

        // Source: μ φ L² / (2 K Δp) = 453 s, and a quarter of it for half the way; derived.
        _session.Error.ShouldContain("   1.9 min  the front passes M1");
        _session.Error.ShouldContain("   7.6 min  resin shows in V1");
        _session.Error.ShouldContain("F1 shut at 3.8 min.");
        _session.Error.ShouldContain("By hand: F1 shut at 3.8 min, F1 opened at 3.8 min.");
    }

    [Fact]
    public async Task ByHand_Stop_LeavesAtOnce()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        _session.Typed = "stop\n";
        (await _session.RunAsync("watch strip.json --moments 4 --by-hand")).ShouldBe(130);

        _session.Error.ShouldContain("Stopped.");
        _session.Output.ShouldNotContain("FILLS");
    }

    [Fact]
    public async Task ByHand_CancelledWhileItWaits_EndsWithoutAnotherKey()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");
        using CancellationTokenSource cancellation = new();
        using BlockingReader keyboard = new(cancellation.Cancel);
        _session.Keyboard = keyboard;

        (await _session.RunAsync("watch strip.json --moments 4 --by-hand", cancellation.Token)).ShouldBe(130);

        keyboard.WasAsked.ShouldBeTrue();
        _session.Error.ShouldContain("Stopped.");
    }

    [Fact]
    public async Task Moments_NotANumber_AreRefusedInPlainWords()
    {
        (await _session.RunAsync("watch strip.json --moments many")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("--moments many: 'many' is no whole number.");
    }

    [Fact]
    public async Task ByHand_AsJson_IsRefused()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("watch strip.json --by-hand --json")).ShouldBe(ExitCodes.BadInput);
    }

    public void Dispose() => _session.Dispose();
}
