using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Others held for too long what a request needed. Nothing of it was written; it may come again in a moment.</summary>
public static class Busy
{
    public static bool Is(Exception e) =>
        e
            is PostgresException
            {
                SqlState: PostgresErrorCodes.LockNotAvailable
                    or PostgresErrorCodes.DeadlockDetected
                    or PostgresErrorCodes.SerializationFailure
                    or PostgresErrorCodes.QueryCanceled // by the limit; who cancels it by going away hears nothing
            }
        || (e.InnerException is { } inner && Is(inner));
}
