using System.Globalization;
using ShedBot.Storage.Torture;
using ShedBot.Storage.Torture.Learning;
using ShedBot.Storage.Torture.Reminders;
using ShedBot.Storage.Torture.Teaching;

return args switch
{
    ["save", var path, var durable] => await Child.SaveAsync(path, durable == "durable"),
    ["remind", var path, var chat] => await ReminderChild.RunAsync(path, chat),
    ["reminders", var kills, var seed] => await ReminderCommand.RunAsync(Number(kills), Number(seed)),
    ["teach", var path] => await TeachingChild.RunAsync(path),
    ["teaching", var kills, var seed] => await TeachingCommand.RunAsync(Number(kills), Number(seed)),
    ["learn", var path, var from] => await LearningChild.RunAsync(path, Number(from)),
    ["learning", var kills, var seed] => await LearningCommand.RunAsync(Number(kills), Number(seed)),
    ["measure-rules", var clubs, var editions, var bytes] => await TeachingMeasurement.RunAsync(Number(clubs), Number(editions), Number(bytes)),
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
          teaching KILLS SEED     the same of clubs' rules: published, proposed and forgotten without a gap
          learning KILLS SEED     the same of what clubs learn by themselves: each edition once, with its line and its note
          measure SAVES           how long a save takes, durable and not
          measure-rules CLUBS EDITIONS BYTES   what clubs' own rules cost, for example: measure-rules 1000 20 20000
          save FILE durable|quick saves without end and prints what was acknowledged (started by campaign)
          remind FILE CHAT        reminds without end (started by reminders)
          teach FILE              publishes without end (started by teaching)
          learn FILE CLUB         has one club after the other learn, from that one on (started by learning)
          hold FILE               keeps the store open until its input ends
        """);
    return 2;
}
