using WeldTrace.Verify;

return VerifyCommand.Run(args, Console.Out, Console.Error);
