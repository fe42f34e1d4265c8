using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that flow meshes, peel ply and cores say what they are made of.</summary>
internal static class LayerPresence
{
    /// <summary>Checks the layers of a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        for (int k = 0; k < plan.FlowMeshes.Count; k++)
        {
            string path = $"flowMeshes[{k}]";
            if (plan.FlowMeshes[k].Area is not null) PresenceCheck.CheckRing(plan.FlowMeshes[k].Area, path + ".area", faults);
            NeedPermeability(plan.FlowMeshes[k].Permeability, Called("flow mesh", plan.FlowMeshes[k].Name, path), path, "{ \"k1M2\": 3e-9 }", faults);
        }

        if (plan.PeelPly is not null) NeedPermeability(plan.PeelPly.Permeability, "peelPly", "peelPly", "{ \"k1M2\": 1e-10, \"k3M2\": 1e-12 }", faults);
        for (int k = 0; k < plan.Cores.Count; k++)
        {
            string path = $"cores[{k}]";
            if (plan.Cores[k].Area is not null) PresenceCheck.CheckRing(plan.Cores[k].Area, path + ".area", faults);
            CheckCore(plan.Cores[k], path, faults);
        }
    }

    /// <summary>What a message calls a part of the plan: its kind and name, or its place when it has no name.</summary>
    public static string Called(string what, string name, string path) => name.Length > 0 ? $"{what} '{ValueReader.Shorten(name)}'" : path;

    private static void NeedPermeability(Permeability? permeability, string name, string path, string example, FaultList faults)
    {
        if (permeability is null && !faults.HasUnder(path + ".permeability"))
            faults.Add(path + ".permeability", $"{name} has no permeability; give at least k1M2, for example {example}.");
    }

    private static void CheckCore(Core core, string path, FaultList faults)
    {
        string name = Called("core", core.Name, path);
        bool isPlain = core.Grooves is not null || core.Holes is not null, isOpen = core.HasPorosity || core.Permeability is not null;
        if (isPlain && isOpen)
        {
            string wrong = core.HasPorosity ? ".porosity" : ".permeability";
            faults.Add(path + wrong, $"{name} gives both grooves or holes and {wrong[1..]}; a plain core has grooves and holes, a flow-through core has porosity and permeability. Give one of the two.");
        }

        if (isPlain || faults.HasUnder(path + ".grooves") || faults.HasUnder(path + ".holes")) return;
        if (!isOpen && !faults.HasUnder(path + ".porosity") && !faults.HasUnder(path + ".permeability"))
        {
            faults.Add(path, $"{name} does not say how resin runs through it; give grooves, holes or both for a plain core, porosity and permeability for a flow-through core. "
                + "A core that resin neither runs through nor passes is left out: give the skins as zones.");
            return;
        }

        if (!isOpen) return;
        NeedPermeability(core.Permeability, name, path, "{ \"k1M2\": 1e-9 }", faults);
        if (!core.HasPorosity && !faults.HasAt(path + ".porosity"))
            faults.Add(path + ".porosity", $"{name} gives no porosity; give the share of its thickness that resin can fill, for example \"porosity\": 0.3.");
    }
}
