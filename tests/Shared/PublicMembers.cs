using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;

namespace Framing.Tests.Shared;

/// <summary>
/// The public members of an assembly as text that people review: what is public is public on purpose. What every record
/// has by itself (equality, copying, its own text) is left out.
/// </summary>
internal static class PublicMembers
{
    private const BindingFlags Declared =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    private static readonly NullabilityInfoContext Nullability = new();

    /// <summary>Fails when the members differ from the accepted text, and says how to accept them.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="accepted">The accepted text.</param>
    /// <param name="acceptedFile">Where the accepted text lies, from the top folder.</param>
    public static void AssertAccepted(Assembly assembly, string accepted, string acceptedFile)
    {
        var members = Of(assembly);
        var expected = accepted.ReplaceLineEndings("\n");
        if (members == expected)
        {
            return;
        }

        var received = Path.Combine(AppContext.BaseDirectory, Path.GetFileName(acceptedFile));
        File.WriteAllText(received, members);
        var lines = Qualified(members);
        var oldLines = Qualified(expected);
        Assert.Fail(
            $"The public members of {assembly.GetName().Name} are not the reviewed ones.\n"
                + Listed("added", lines.Except(oldLines, StringComparer.Ordinal))
                + Listed("gone", oldLines.Except(lines, StringComparer.Ordinal))
                + $"If that is meant, accept it by copying {received} over {acceptedFile} and review the difference."
        );
    }

    /// <summary>The public types in the order of their names, each with its public members.</summary>
    public static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (
            var type in assembly
                .GetExportedTypes()
                .OrderBy(type => type.FullName, StringComparer.Ordinal)
        )
        {
            text.Append(Head(type)).Append('\n');
            foreach (var line in Members(type).Order(StringComparer.Ordinal))
            {
                text.Append("    ").Append(line).Append('\n');
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static string Listed(string what, IEnumerable<string> lines) =>
        string.Concat(lines.Select(line => $"  {what}: {line}\n"));

    /// <summary>Every line with its type before it, so that the same member of two types is two lines.</summary>
    private static List<string> Qualified(string text)
    {
        var type = "";
        var lines = new List<string>();
        foreach (var line in text.Split('\n'))
        {
            if (line.StartsWith(' '))
            {
                lines.Add($"{type}: {line.Trim()}");
            }
            else if (line.Length > 0)
            {
                type = line.Split(" : ")[0];
                lines.Add(line);
            }
        }

        return lines;
    }

    private static string Head(Type type)
    {
        var kind =
            type.IsInterface ? "interface"
            : type.IsEnum ? "enum"
            : type.IsValueType ? (IsReadOnly(type) ? "readonly struct" : "struct")
            : type is { IsAbstract: true, IsSealed: true } ? "static class"
            : type.IsAbstract ? "abstract class"
            : type.IsSealed ? "sealed class"
            : "class";
        var bases = type.GetInterfaces()
            .Where(item => !type.IsEnum && !item.IsDefined(typeof(CompilerGeneratedAttribute)))
            .Select(Name)
            .Order(StringComparer.Ordinal)
            .ToList();
        if (type.BaseType is { } parent && type.IsClass && parent != typeof(object))
        {
            bases.Insert(0, Name(parent));
        }

        var usage = type.GetCustomAttribute<AttributeUsageAttribute>(inherit: false)
            is { } attribute
            ? $" [on {attribute.ValidOn}{(attribute.AllowMultiple ? ", several" : "")}]"
            : "";
        return $"{kind} {Name(type)}{(bases.Count > 0 ? " : " : "")}{string.Join(", ", bases)}{usage}";
    }

    private static IEnumerable<string> Members(Type type)
    {
        foreach (var member in type.GetMembers(Declared))
        {
            var line = member switch
            {
                FieldInfo field when IsVisible(field) => Field(field),
                ConstructorInfo constructor
                    when IsVisible(constructor) && !IsOfRecord(constructor) =>
                    $"new({Parameters(constructor)})",
                PropertyInfo property when IsVisible(property) => Property(property),
                MethodInfo method when IsVisible(method) && IsOwn(method) => Method(method),
                EventInfo => $"event {member.Name}",
                _ => null,
            };
            if (line is not null)
            {
                yield return line;
            }
        }
    }

    private static string? Field(FieldInfo field)
    {
        if (field.DeclaringType!.IsEnum)
        {
            return field.IsLiteral
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Convert.ToInt64(field.GetRawConstantValue(), CultureInfo.InvariantCulture):00} {field.Name}"
                )
                : null;
        }

        var kind =
            field.IsLiteral ? "const "
            : field.IsStatic ? "static "
            : "";
        var value = field.IsLiteral ? " = " + Literal(field.GetRawConstantValue()) : "";
        return $"{kind}{Name(field.FieldType)} {field.Name}{value}";
    }

    private static string Property(PropertyInfo property)
    {
        var accessor = property.GetAccessors(nonPublic: true)[0];
        var setter =
            property.SetMethod is { } set && IsVisible(set)
                ? set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
                    ? " init;"
                    : " set;"
                : "";
        var getter = property.GetMethod is { } get && IsVisible(get) ? " get;" : "";
        var required = property.IsDefined(typeof(RequiredMemberAttribute)) ? "required " : "";
        var index = property.GetIndexParameters() is { Length: > 0 } parameters
            ? $"[{string.Join(", ", parameters.Select(Parameter))}]"
            : "";
        return $"{(accessor.IsStatic ? "static " : "")}{required}{Typed(property.PropertyType, Nullability.Create(property))} {property.Name}{index} {{{getter}{setter} }}";
    }

    private static string Method(MethodInfo method)
    {
        var generic = method.IsGenericMethod
            ? $"<{string.Join(", ", method.GetGenericArguments().Select(Name))}>"
            : "";
        return $"{(method.IsStatic ? "static " : "")}{Typed(method.ReturnType, Nullability.Create(method.ReturnParameter))} {method.Name}{generic}({Parameters(method)})";
    }

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(Parameter));

    private static string Parameter(ParameterInfo parameter)
    {
        var way =
            parameter.IsOut ? "out "
            : parameter.ParameterType.IsByRef ? (parameter.IsIn ? "in " : "ref ")
            : parameter.IsDefined(typeof(ParamArrayAttribute)) ? "params "
            : "";
        var value = parameter.HasDefaultValue ? " = " + Literal(parameter.RawDefaultValue) : "";
        return $"{way}{Typed(parameter.ParameterType, Nullability.Create(parameter))} {parameter.Name}{value}";
    }

    private static string Literal(object? value) =>
        value switch
        {
            null => "default",
            string text => $"\"{text}\"",
            bool flag => flag ? "true" : "false",
            IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString() ?? "",
        };

    private static string Typed(Type type, NullabilityInfo info)
    {
        var mark = !type.IsValueType && info.ReadState == NullabilityState.Nullable ? "?" : "";
        if (type.IsByRef)
        {
            return Typed(type.GetElementType()!, info);
        }

        if (type.IsArray)
        {
            var element = info.ElementType is { } inner
                ? Typed(type.GetElementType()!, inner)
                : Name(type.GetElementType()!);
            return element + "[]" + mark;
        }

        if (
            type.IsGenericType
            && Nullable.GetUnderlyingType(type) is null
            && info.GenericTypeArguments.Length == type.GetGenericArguments().Length
        )
        {
            var arguments = type.GetGenericArguments().Zip(info.GenericTypeArguments, Typed);
            return $"{Plain(type)}<{string.Join(", ", arguments)}>{mark}";
        }

        return Name(type) + mark;
    }

    private static string Name(Type type)
    {
        if (type.IsByRef)
        {
            return Name(type.GetElementType()!);
        }

        if (type.IsArray)
        {
            return Name(type.GetElementType()!) + "[]";
        }

        if (Nullable.GetUnderlyingType(type) is { } underlying)
        {
            return Name(underlying) + "?";
        }

        return type.IsGenericType
            ? $"{Plain(type)}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>"
            : Plain(type);
    }

    private static string Plain(Type type) =>
        type == typeof(void) ? "void"
        : type == typeof(bool) ? "bool"
        : type == typeof(byte) ? "byte"
        : type == typeof(char) ? "char"
        : type == typeof(int) ? "int"
        : type == typeof(long) ? "long"
        : type == typeof(float) ? "float"
        : type == typeof(double) ? "double"
        : type == typeof(string) ? "string"
        : type == typeof(object) ? "object"
        : type.IsNested && !type.IsGenericParameter
            ? Plain(type.DeclaringType!) + "." + type.Name.Split('`')[0]
        : type.Name.Split('`')[0];

    private static bool IsReadOnly(Type type) => type.IsDefined(typeof(IsReadOnlyAttribute));

    private static bool IsVisible(FieldInfo field) =>
        (field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly) && !field.IsSpecialName;

    private static bool IsVisible(MethodBase method) =>
        method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static bool IsVisible(PropertyInfo property) =>
        property.GetAccessors(nonPublic: true).Any(IsVisible)
        && !property.IsDefined(typeof(CompilerGeneratedAttribute))
        && property.Name != "EqualityContract";

    private static bool IsOwn(MethodInfo method)
    {
        var isAccessor =
            method.IsSpecialName && !method.Name.StartsWith("op_", StringComparison.Ordinal);
        var isOfObject =
            method.GetBaseDefinition().DeclaringType is { } root
            && (root == typeof(object) || root == typeof(ValueType));
        return !isAccessor && !isOfObject && !method.IsDefined(typeof(CompilerGeneratedAttribute));
    }

    /// <summary>The copying constructor that a record has by itself.</summary>
    private static bool IsOfRecord(ConstructorInfo constructor) =>
        constructor.IsDefined(typeof(CompilerGeneratedAttribute));
}
