using System.Globalization;
using ShedBot.Storage.Torture;
using ShedBot.Storage.Torture.Reminders;

return args switch
{
    ["save", var path, var durable] => await Child.SaveAsync(path, durable == "durable"),
    ["remind", var path, var chat] => await ReminderChild.RunAsync(path, chat),
    ["reminders", var kills, var seed] => await ReminderCommand.RunAsync(Number(kills), Number(seed)),
    ["hold", var path] => await Child.HoldAsync(path),
    ["campaign", var kills, var seed] => await CampaignCommand.RunAsync(Number(kills), Number(seed)),
    ["measure", var saves] => await Measurement.RunAsync(Number(saves)),
    _ => Help(),
};

static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

static int Help()
{
    Console.WriteLine("""
        Kills a saving store again and again and looks whether anything acknowledged was lost.
          campaign KILLS SEED     for example: campaign 200 1
          reminders KILLS SEED    the same of reminders: none lost, none doubled
          measure SAVES           how long a save takes, durable and not
          save FILE durable|quick saves without end and prints what was acknowledged (started by campaign)
          remind FILE CHAT        reminds without end (started by reminders)
          hold FILE               keeps the store open until its input ends
        """);
    return 2;
}
