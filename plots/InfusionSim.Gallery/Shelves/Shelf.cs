using System.Text;
using System.Xml.Linq;
using InfusionSim.Gallery.Pictures;
using InfusionSim.Plots;

namespace InfusionSim.Gallery.Shelves;

/// <summary>The gallery's files on disk.</summary>
internal static class Shelf
{
    /// <summary>Largest file that belongs into the project [bytes].</summary>
    internal const int MostBytes = 150_000;

    private static readonly string[] Endings = [".png", ".svg", ".webp", ".md"];

    /// <summary>Writes the files and removes pictures that nothing draws any more.</summary>
    internal static void Write(string folder, IReadOnlyList<HungFile> files)
    {
        foreach (var old in Names(folder).Except(files.Select(file => file.Name)))
        {
            File.Delete(Path.Combine(folder, old));
        }

        foreach (var file in files)
        {
            File.WriteAllBytes(Path.Combine(folder, file.Name), file.Bytes);
        }
    }

    /// <summary>What differs between the files on disk and those drawn, one sentence each.</summary>
    internal static IReadOnlyList<string> Compare(string folder, IReadOnlyList<HungFile> files)
    {
        var faults = new List<string>();
        foreach (var file in files)
        {
            var path = Path.Combine(folder, file.Name);
            if (file.Bytes.Length > MostBytes)
            {
                faults.Add($"{file.Name} has {file.Bytes.Length} bytes; at most {MostBytes} belong into the project");
            }

            if (!File.Exists(path))
            {
                faults.Add($"{file.Name} is missing");
            }
            else if (Difference(file, File.ReadAllBytes(path)) is { } difference)
            {
                faults.Add($"{file.Name} {difference}");
            }
        }

        faults.AddRange(Names(folder).Except(files.Select(file => file.Name)).Select(name => $"{name} is drawn by nothing"));
        return faults;
    }

    // Another processor may round the last digit of a number otherwise, so that equal bytes would be too much to ask for.
    private static string? Difference(HungFile file, byte[] onDisk) => Path.GetExtension(file.Name) switch
    {
        ".png" or ".webp" => PictureDifference.Find(onDisk, file.Bytes),
        ".svg" => Texts(onDisk).SequenceEqual(Texts(file.Bytes)) ? null : "says something else",
        _ => Encoding.UTF8.GetString(onDisk) == Encoding.UTF8.GetString(file.Bytes) ? null : "says something else",
    };

    private static IEnumerable<string> Texts(byte[] svg)
    {
        using var stream = new MemoryStream(svg);
        return [.. XDocument.Load(stream).Descendants().Where(element => element.Name.LocalName is "text" or "title").Select(element => element.Value)];
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.GetFiles(folder).Select(path => Path.GetFileName(path)!).Where(name => Endings.Contains(Path.GetExtension(name)));
}
