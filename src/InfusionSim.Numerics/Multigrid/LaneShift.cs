using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>The left and right neighbours of sixteen cells out of vectors that are in registers already.</summary>
/// <remarks>Reading them again a cell further would wait for the stores just made to the same line of the cache.</remarks>
internal static class LaneShift
{
    /// <summary>The cells one to the left.</summary>
    /// <param name="before">The sixteen cells before.</param>
    /// <param name="here">The sixteen cells.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<float> Left(Vector512<float> before, Vector512<float> here)
    {
        if (Avx512F.IsSupported) return Avx512F.AlignRight32(here.AsUInt32(), before.AsUInt32(), 15).AsSingle();
        return Vector512.Shuffle(here, Vector512.Create(0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14)).WithElement(0, before[15]);
    }

    /// <summary>The cells one to the right.</summary>
    /// <param name="here">The sixteen cells.</param>
    /// <param name="after">The sixteen cells after.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<float> Right(Vector512<float> here, Vector512<float> after)
    {
        if (Avx512F.IsSupported) return Avx512F.AlignRight32(after.AsUInt32(), here.AsUInt32(), 1).AsSingle();
        return Vector512.Shuffle(here, Vector512.Create(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 15)).WithElement(15, after[0]);
    }
}
