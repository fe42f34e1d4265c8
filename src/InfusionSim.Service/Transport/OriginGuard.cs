
namespace InfusionSim.Service.Transport;

/// <summary>Refuses requests that a page from elsewhere sends through the browser of somebody on this machine.</summary>
internal sealed class OriginGuard(RequestDelegate next)
{
    /// <summary>Passes on what comes from no page, or from a page of this machine.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        context.Response.Headers.XContentTypeOptions = "nosniff";
        context.Response.Headers["Referrer-Policy"] = "no-referrer";
        string? origin = context.Request.Headers.Origin;
        if (string.IsNullOrEmpty(origin) || IsOwn(origin, context.Request.Host)) return next(context);
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }

    private static bool IsOwn(string origin, HostString host) =>
        Uri.TryCreate(origin, UriKind.Absolute, out Uri? page)
        && LoopbackNames.Hosts.Contains(page.Host, StringComparer.OrdinalIgnoreCase)
        && page.Port == host.Port;
}
