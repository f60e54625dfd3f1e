using Npgsql;
using NpgsqlTypes;

namespace BrewFloor.Store.Log;

/// <summary>Statements that go to the server together and come back together: one round trip.</summary>
internal static class Statements
{
    extension(NpgsqlBatch batch)
    {
        public void Add(string text, params ReadOnlySpan<object> values)
        {
            var command = batch.CreateBatchCommand();
            command.CommandText = text;
            foreach (var value in values)
            {
                command.Parameters.Add(value as NpgsqlParameter ?? new() { Value = value });
            }

            batch.BatchCommands.Add(command);
        }
    }

    extension(NpgsqlConnection connection)
    {
        public async Task DoAsync(string text, CancellationToken stop, params object[] values)
        {
            await using var batch = connection.CreateBatch();
            batch.Add(text, values);
            await batch.ExecuteNonQueryAsync(stop);
        }
    }

    extension(NpgsqlDataReader reader)
    {
        public T? OrNull<T>(int column)
            where T : struct => reader.IsDBNull(column) ? null : reader.GetFieldValue<T>(column);

        public string? TextOrNull(int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

        /// <summary>Instants come back in UTC.</summary>
        public DateTimeOffset At(int column) => reader.GetFieldValue<DateTimeOffset>(column);
    }

    public static NpgsqlParameter Jsonb(string? json) => Typed(json, NpgsqlDbType.Jsonb);

    public static NpgsqlParameter Jsonb(string[] json) => Typed(json, NpgsqlDbType.Jsonb | NpgsqlDbType.Array);

    public static NpgsqlParameter Text(string? text) => Typed(text, NpgsqlDbType.Text);

    public static NpgsqlParameter Instant(DateTimeOffset? at) => Typed(at, NpgsqlDbType.TimestampTz);

    public static NpgsqlParameter Instants(IEnumerable<DateTimeOffset?> ats) =>
        Typed(ats.Select(at => at?.UtcDateTime).ToArray(), NpgsqlDbType.TimestampTz | NpgsqlDbType.Array);

    public static NpgsqlParameter Id(Guid? id) => Typed(id, NpgsqlDbType.Uuid);

    public static NpgsqlParameter Long(long? number) => Typed(number, NpgsqlDbType.Bigint);

    private static NpgsqlParameter Typed(object? value, NpgsqlDbType type) =>
        new() { Value = value ?? DBNull.Value, NpgsqlDbType = type };
}
