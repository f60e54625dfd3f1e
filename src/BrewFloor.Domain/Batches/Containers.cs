using UnitsNet;

namespace BrewFloor.Domain.Batches;

public enum ContainerKind
{
    Keg,
    Cask,
    Bottle,
    Can,
}

/// <summary>So many containers of one kind and size.</summary>
/// <param name="Size">Of one, in L.</param>
public readonly record struct Containers(ContainerKind Kind, Volume Size, int Count)
{
    /// <summary>No valve that lets off what a second fermentation makes.</summary>
    public bool AreSealed => Kind is ContainerKind.Bottle or ContainerKind.Can;
}

/// <summary>How hops went in.</summary>
public enum HopWay
{
    ThroughOpening,
    ThroughEqualisedPort,
}
