using System.Reflection;
using System.Reflection.Emit;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>The types that compiled code names: in its signatures and fields, and in the instructions of its methods.</summary>
public static class UsedTypes
{
    private const BindingFlags Declared =
        BindingFlags.DeclaredOnly
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.Public
        | BindingFlags.NonPublic;

    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!)
        .ToDictionary(o => o.Value);

    /// <summary>What a type uses, with what the compiler nested in it for lambdas and awaits.</summary>
    public static IReadOnlySet<Type> Of(Type type)
    {
        HashSet<Type> used = [];
        foreach (var part in type.GetNestedTypes(Declared).Append(type))
        {
            Take(part.BaseType, used);
            Take(part.GetInterfaces(), used);
            Take(part.GetFields(Declared).Select(f => f.FieldType), used);
            Take(part.GetProperties(Declared).Select(p => p.PropertyType), used);
            foreach (var method in part.GetMembers(Declared).OfType<MethodBase>())
            {
                Take(method.GetParameters().Select(p => p.ParameterType), used);
                Take((method as MethodInfo)?.ReturnType, used);
                Take(method.GetMethodBody()?.LocalVariables.Select(v => v.LocalType) ?? [], used);
                Take(Tokens(method).SelectMany(t => Named(method, t)), used);
            }
        }

        return used;
    }

    private static IEnumerable<int> Tokens(MethodBase method)
    {
        var code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        for (var at = 0; at < code.Length; )
        {
            var value = code[at] == 0xFE ? BitConverter.ToInt16([code[at + 1], 0xFE]) : code[at];
            at += code[at] == 0xFE ? 2 : 1;
            var operand = OpCodesByValue[value].OperandType;
            if (
                operand
                is OperandType.InlineTok
                    or OperandType.InlineType
                    or OperandType.InlineMethod
                    or OperandType.InlineField
            )
            {
                yield return BitConverter.ToInt32(code, at);
            }

            at += operand switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget
                or OperandType.ShortInlineI
                or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
        }
    }

    private static IEnumerable<Type?> Named(MethodBase method, int token)
    {
        var member = method.Module.ResolveMember(
            token,
            method.DeclaringType?.GetGenericArguments(),
            method.IsGenericMethod ? method.GetGenericArguments() : null
        );
        var arguments = member is MethodInfo { IsGenericMethod: true } called
            ? called.GetGenericArguments()
            : [];
        return [member as Type, member?.DeclaringType, .. arguments];
    }

    private static void Take(IEnumerable<Type?> types, HashSet<Type> used)
    {
        foreach (var type in types)
        {
            Take(type, used);
        }
    }

    private static void Take(Type? type, HashSet<Type> used)
    {
        while (type?.HasElementType is true)
        {
            type = type.GetElementType();
        }

        if (
            type is null
            || type.IsGenericParameter
            || !used.Add(type.IsGenericType ? type.GetGenericTypeDefinition() : type)
        )
        {
            Take(
                type?.GetGenericArguments().Where(t => !t.IsGenericParameter && !used.Contains(t))
                    ?? [],
                used
            );
            return;
        }

        Take(type.GetGenericArguments(), used);
    }
}
