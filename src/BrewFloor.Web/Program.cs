using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Backups;
using BrewFloor.Web.Doctor;
using BrewFloor.Web.Hosting;
using Microsoft.EntityFrameworkCore;

try
{
    var options = StartOptions.Parse(EF.IsDesignTime ? [] : args, Environment.GetEnvironmentVariable);
    return await (
        options.Command switch
        {
            "serve" => Serving.RunAsync(options, args),
            "migrate" => ShortCommands.MigrateAsync(options),
            "user" => ShortCommands.UserAsync(options),
            "token" => ShortCommands.TokenAsync(options),
            "backup" => BackupCommands.BackupAsync(options),
            "restore" => BackupCommands.RestoreAsync(options),
            "export" => BackupCommands.ExportAsync(options),
            "import" => BackupCommands.ImportAsync(options),
            "doctor" => DoctorCommand.RunAsync(options),
            _ => throw new StartProblemException(
                $"Unknown command \"{options.Command}\". Known: serve, migrate, user, token, backup, restore, export, import, doctor."
            ),
        }
    );
}
catch (Exception problem) when (problem is StartProblemException or PrivateServerProblem)
{
    await Console.Error.WriteLineAsync(problem.Message);
    return 1;
}

public partial class Program;
