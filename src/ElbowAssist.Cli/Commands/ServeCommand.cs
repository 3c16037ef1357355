using System.CommandLine;
using System.Globalization;
using System.Net;
using ElbowAssist.Cli.Serving;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>serve</c>: the reading page and the service on this machine.</summary>
internal static class ServeCommand
{
    public static Command Create()
    {
        var port = new Option<int>("--port")
        {
            Description = "Port to listen on; 0 takes a free one.",
            HelpName = "N",
            DefaultValueFactory = _ => 8077,
            CustomParser = result =>
            {
                if (int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 0 and <= 65_535)
                {
                    return number;
                }

                result.AddError("--port takes a number from 0 to 65535.");
                return 0;
            },
        };
        var listen = new Option<IPAddress>("--listen")
        {
            Description = "Address to listen on; off loopback a token is asked of every caller, and traffic is not encrypted.",
            HelpName = "ADDRESS",
            DefaultValueFactory = _ => IPAddress.Loopback,
            CustomParser = result =>
            {
                if (IPAddress.TryParse(result.Tokens[0].Value, out var address))
                {
                    return address;
                }

                result.AddError("--listen takes an IP address of this machine.");
                return null;
            },
        };
        var hosts = new Option<string[]>("--allow-host") { Description = "A further host name to answer to.", HelpName = "NAME" };
        var origins = new Option<string[]>("--allow-origin") { Description = "Origin of a web viewer that may call the service.", HelpName = "ORIGIN" };
        var store = new Option<string?>("--store") { Description = "File in which studies are kept.", HelpName = "FILE" };
        var watch = new Option<string?>("--watch") { Description = "Folder whose films become studies as a receiver writes them.", HelpName = "DIR" };
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var archive = new Option<Uri?>("--archive")
        {
            Description = "Address of the DICOMweb service of an archive whose films the page may fetch.",
            HelpName = "URL",
            CustomParser = result =>
            {
                if (Uri.TryCreate(result.Tokens[0].Value, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https")
                {
                    return uri;
                }

                result.AddError("--archive takes the http or https address of a DICOMweb service.");
                return null;
            },
        };
        var command = new Command("serve", "Serve the reading page and the HTTP service on this machine.") { port, listen, hosts, origins, store, watch, archive, model };
        command.SetAction((parsed, cancellation) => ServeRun.RunAsync(
            new ServeRequest(
                parsed.GetValue(port),
                parsed.GetValue(listen)!,
                parsed.GetValue(hosts) ?? [],
                parsed.GetValue(origins) ?? [],
                parsed.GetValue(store),
                parsed.GetValue(watch),
                parsed.GetValue(archive),
                parsed.GetValue(model)),
            cancellation));
        return command;
    }
}
