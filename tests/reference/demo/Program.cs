using Framing.DemoFrames;

if (args.Length != 1 || !Directory.Exists(args[0]))
{
    Console.Error.WriteLine("Give the folder into which the demo pictures shall go.");
    return 2;
}

HearthFrame.Write(args[0]);
ShorePicture.Write(args[0]);
return 0;
