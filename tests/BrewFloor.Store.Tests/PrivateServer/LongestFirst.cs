using BrewFloor.Store.Tests.Log;
using BrewFloor.Store.Tests.PrivateServer;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(LongestFirst))]

namespace BrewFloor.Store.Tests.PrivateServer;

/// <summary>The random logs take longest: they begin, so that at the end of a run nobody waits for them alone.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(
        IReadOnlyCollection<TTestCollection> testCollections
    )
        where TTestCollection : ITestCollection =>
        [
            .. testCollections.OrderBy(one =>
                one.TestCollectionDisplayName.Contains(nameof(RandomLogTests), StringComparison.Ordinal) ? 0 : 1
            ),
        ];
}
