using BrewFloor.Benchmarks;

return args switch
{
    ["bench", .. var names] => await FullBench.RunAsync(names),
    ["drill", .. var names] => await FullDrills.RunAsync(names),
    _ => Misused(),
};

static int Misused()
{
    Console.Error.WriteLine("bench [name], drill [name]");
    return 2;
}
