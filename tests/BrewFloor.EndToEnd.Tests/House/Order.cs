using BrewFloor.EndToEnd.Tests.House;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(LongestFirst))]

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>Tests with a limit in seconds: nothing else runs beside them.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>The drills begin, one after the other, so that at the end of a run nobody waits for them alone.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(
        IReadOnlyCollection<TTestCollection> testCollections
    )
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderBy(one => one.TestCollectionDisplayName is nameof(Drills) ? 0 : 1)];
}
