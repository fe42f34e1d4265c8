using InfusionSim.Service.Fills;
using InfusionSim.Service.Mixing;
using InfusionSim.Service.Resins;
using InfusionSim.Service.Transport;

namespace InfusionSim.Service.Hosting;

/// <summary>The way of a request through the service, outermost first.</summary>
internal static class ServicePipeline
{
    /// <summary>Lays the way.</summary>
    public static void Lay(WebApplication application)
    {
        application.UseHostFiltering();
        application.UseMiddleware<OriginGuard>();
        application.UseRouting();
        application.UseGrpcWeb(new GrpcWebOptions { DefaultEnabled = true });
        application.UseMiddleware<WireGuard>();
        application.UseMiddleware<JsonGuard>();
        application.MapGrpcService<FillService>();
        application.MapGrpcService<ResinService>();
        application.MapGrpcService<MixService>();
        application.MapGrpcHealthChecksService();
        application.MapGrpcReflectionService();
    }
}
