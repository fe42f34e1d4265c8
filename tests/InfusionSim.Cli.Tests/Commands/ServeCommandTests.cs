using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Hosting;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class ServeCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Server_OfAnotherProcess_AnswersAsTheEmbeddedOne()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");
        await _session.RunAsync("fill strip.json --json");
        string embedded = _session.Output;
        await using EmbeddedService host = await EmbeddedService.StartAsync(0, 0, CancellationToken.None);

        (await _session.RunAsync($"fill strip.json --json --server {host.Address}")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldBe(embedded);
    }

    [Fact]
    public async Task Port_Taken_EndsWithThree()
    {
        await using EmbeddedService host = await EmbeddedService.StartAsync(0, 0, CancellationToken.None);

        (await _session.RunAsync($"serve --grpc-port {host.Address.Port} --http-port 0")).ShouldBe(ExitCodes.NoService);

        _session.Error.ShouldContain("cannot start");
    }

    [Fact]
    public async Task Port_ThatIsNone_EndsWithTwo()
    {
        (await _session.RunAsync("serve --grpc-port 70000")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("0 to 65535");
    }

    public void Dispose() => _session.Dispose();
}
