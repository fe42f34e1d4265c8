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

    public void Dispose() => _session.Dispose();
}
