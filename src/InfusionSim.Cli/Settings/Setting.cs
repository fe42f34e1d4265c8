namespace InfusionSim.Cli.Settings;

/// <summary>One change of a plan that was typed on the command line.</summary>
/// <param name="Key">Path of the key, as an error names it: preform.zones[0].porosity.</param>
/// <param name="Value">What was typed behind the equals sign.</param>
public sealed record Setting(string Key, string Value)
{
    /// <summary>Takes KEY=VALUE apart.</summary>
    /// <param name="typed">What was typed.</param>
    /// <exception cref="FormatException">When there is no equals sign or no key.</exception>
    public static Setting Parse(string typed)
    {
        int sign = typed.IndexOf('=', StringComparison.Ordinal);
        if (sign <= 0) throw new FormatException($"--set {typed}: write KEY=VALUE, for example --set resin.viscosityPaS=300mPa.s");
        return new Setting(typed[..sign].Trim(), typed[(sign + 1)..].Trim());
    }
}
