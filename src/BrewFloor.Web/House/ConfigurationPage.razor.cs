using BrewFloor.Web.Hosting;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.House;

/// <summary>What the process was started with: to read, when something is not as it was meant.</summary>
public sealed partial class ConfigurationPage(Wording wording, StartOptions options)
{
    private readonly IReadOnlyList<StartedWith> _all = StartedWith.All(options, Environment.GetEnvironmentVariable);
}
