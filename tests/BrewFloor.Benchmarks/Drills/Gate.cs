namespace BrewFloor.Benchmarks.Drills;

/// <summary>Lets requests through while it is open; those that come to a closed one wait in front of it.</summary>
internal sealed class Gate : DelegatingHandler
{
    private volatile TaskCompletionSource _open = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public Gate(HttpMessageHandler inner)
        : base(inner) => Open();

    public void Open() => _open.TrySetResult();

    public void Close()
    {
        if (_open.Task.IsCompleted)
        {
            _open = new(TaskCreationOptions.RunContinuationsAsynchronously);
        }
    }

    protected override async Task<HttpResponseMessage> SendAsync(
        HttpRequestMessage request,
        CancellationToken cancellationToken
    )
    {
        await _open.Task.WaitAsync(cancellationToken);
        return await base.SendAsync(request, cancellationToken);
    }
}
