using BrewFloor.EndToEnd.Tests.Drills;
using BrewFloor.EndToEnd.Tests.House;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(LongestFirst))]

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>Tests with a limit in seconds: nothing else runs beside them.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>The drills begin, so that at the end of a run nobody waits for them alone.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    private static readonly string[] Long = [nameof(KillDrillTests), nameof(PostgresDrillTests)];

    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(
        IReadOnlyCollection<TTestCollection> testCollections
    )
        where TTestCollection : ITestCollection =>
        [
            .. testCollections.OrderBy(collection =>
                Long.Any(name => collection.TestCollectionDisplayName.Contains(name, StringComparison.Ordinal)) ? 0 : 1
            ),
        ];
}
