
namespace InfusionSim.Service.Hosting;

/// <summary>Leaves signals to the program that hosts the service.</summary>
internal sealed class QuietLifetime : IHostLifetime
{
    /// <inheritdoc/>
    public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
