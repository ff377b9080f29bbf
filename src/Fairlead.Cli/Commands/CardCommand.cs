using System.CommandLine;
using Fairlead.Calculations;
using Fairlead.Cli.Output;
using Fairlead.Documents;
using Fairlead.Planning.Cards;

namespace Fairlead.Cli.Commands;

/// <summary><c>fairlead card</c>: the job cards of a job, on the terminal or as a PDF to print.</summary>
internal static class CardCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = JobArguments.Folder();
        var task = new Argument<string?>("TASK") { Description = "The task or test; without it the cards are listed.", DefaultValueFactory = _ => null };
        var all = new Option<bool>("--all") { Description = "All cards, in the order of the work." };
        var size = new Option<string>("--size") { Description = $"Size of the pages: {string.Join(" or ", CardFormat.All.Select(f => f.Name))}.", DefaultValueFactory = _ => CardFormat.A4.Name, HelpName = "SIZE" };
        var link = new Option<string?>("--link") { Description = "What the square code says before the number of the card, as the address of a workbench; work order and number unless given.", HelpName = "ADDRESS" };
        var output = JobArguments.Output("The PDF file to write; without it the card is shown as text.");
        var format = Formats.Option("text", "json");
        var command = new Command("card", "Show a job card or test card, or write cards as PDF to print: steps, figures needed at the place, cautions, lines to sign.") { folder, task, all, size, link, output, format };
        command.SetAction(parsed =>
        {
            var (directory, named) = (parsed.GetValue(folder)!, parsed.GetValue(task));
            var page = CardFormat.All.FirstOrDefault(f => f.Name == parsed.GetValue(size)) ?? throw new BadInputException($"--size: found '{parsed.GetValue(size)}', expected {string.Join(" or ", CardFormat.All.Select(f => f.Name))}.");
            var read = JobArguments.Load(terminal, directory);
            var assessment = JobArguments.Assess(terminal, directory, read);
            var cards = terminal.Work("deriving the cards", () => JobCards.Of(assessment));
            var chosen = named is null ? parsed.GetValue(all) || parsed.GetValue(output) is not null ? cards : [] : [Find(cards, named, directory)];
            if (parsed.GetValue(output) is { } file)
            {
                JobArguments.WriteFile(terminal, file, terminal.Work("writing the cards", progress => CardPages.Write(assessment.Job, read.Hash, chosen, page, PackCommand.Today(terminal), parsed.GetValue(link), progress, terminal.Stop)));
            }
            else if (parsed.GetValue(format) == "json")
            {
                terminal.Out.WriteLine(Json.Text((chosen.Count == 0 ? cards : chosen).Select(CardText.Json)));
            }
            else
            {
                CardText.Write(terminal, cards, chosen);
            }

            return ExitCode.Holds;
        });
        return command;
    }

    private static JobCard Find(Sequence<JobCard> cards, string id, string directory) => cards.FirstOrDefault(c => c.Id == id)
        ?? throw new BadInputException($"The job has no task '{id}'.{Nearest.Hint(id, cards.Select(c => c.Id), $"'fairlead card {Terminal.Quoted(directory)}' lists them all.")}");
}
