namespace ElbowAssist.Anatomy.Rules;

/// <summary>
/// The publications behind the tables. Each was read at least as an abstract; parts of a citation that could not be
/// checked (authors, volume) are left out rather than guessed. Teaching pages are not listed: nothing here may rest on one.
/// </summary>
public static class Publications
{
    /// <summary>A choice of this project, where no publication gives a limit.</summary>
    public static Publication ThisProject { get; } = new("project", "choice of this project, not a published limit");

    /// <summary>Reminders of clinical practice that carry no value; the local protocol decides.</summary>
    public static Publication LocalProtocol { get; } =
        new("local", "reminder set by this project, not a published limit, the local protocol decides");

#pragma warning disable CS1591 // each member is the publication its citation names
    public static Publication Herman { get; } = new("herman",
        "Herman MJ, Boardman MJ, Hoover JR, Chafetz RS. J Bone Joint Surg Am 2009;91(9):2188-93");

    public static Publication AnteriorLineThesis { get; } = new("ahl-thesis",
        "Thesis on the anterior humeral line in 493 children, globethesis.com t=2404330572998631");

    public static Publication Baskovic { get; } = new("baskovic",
        "Bašković M, Gregov A. J Orthop Trauma 2024;38(2), doi 10.1097/BOT.0000000000002729");

    public static Publication Ramirez { get; } = new("ramirez",
        "Ramirez RN, Ryan DD, Williams J, et al. J Pediatr Orthop 2014;34(8), doi 10.1097/BPO.0000000000000199");

    public static Publication FaderLine { get; } = new("fader-line",
        "Fader LM, Laor T, Eismann EA, Cornwall R, Little KJ. J Pediatr Orthop 2016;36:161-6, doi 10.1097/BPO.0000000000000426");

    public static Publication FaderOssification { get; } = new("fader-ossification",
        "Fader LM, Laor T, Eismann EA, Cornwall R, Little KJ. MR imaging of capitellar ossification. Pediatr Radiol");

    public static Publication Rouleau { get; } = new("rouleau",
        "Rouleau DM et al. J Shoulder Elbow Surg 2012;21(5):574-9, doi 10.1016/j.jse.2011.03.017");

    public static Publication Schamberger { get; } = new("schamberger",
        "Schamberger CT, Grossner T, Rehnitz C, et al. Biomedicines 2024;12(12):2660, doi 10.3390/biomedicines12122660");

    public static Publication LateralHumeralLine { get; } = new("lateral-humeral-line",
        "J Pediatr Orthop 2017;37(3):e150-5, doi 10.1097/BPO.0000000000000853");

    public static Publication Shank { get; } = new("shank",
        "Shank CF, Wiater BP, Pace JL, et al. J Pediatr Orthop 2011;31(3):266-71, doi 10.1097/BPO.0b013e31821009af");

    public static Publication Hasegawa2018 { get; } = new("hasegawa-2018",
        "Hasegawa M, Suzuki T, Kuroiwa T, et al. Medicine 2018;97(14):e0314");

    public static Publication Hasegawa2017 { get; } = new("hasegawa-2017",
        "Hasegawa M et al. JBJS Open Access 2017;2(1):e0012, doi 10.2106/JBJS.OA.16.00012");

    public static Publication Kang1994 { get; } = new("kang-1994", "Kang CN, Choi CH. Ewha Med J 1994;17:383");

    public static Publication BaumannPractice { get; } = new("baumann-practice",
        "Rev Bras Ortop 2022;57(6):1039-44, doi 10.1055/s-0042-1743271");

    public static Publication Simanovsky { get; } = new("humerocondylar-2008",
        "J Pediatr Orthop 2008;28(4):463-5, doi 10.1097/BPO.0b013e31817445ff");

    public static Publication ShaftCondylar2019 { get; } = new("shaft-condylar-2019",
        "Eur J Orthop Surg Traumatol 2019, doi 10.1007/s00590-019-02489-1");

    public static Publication Siriraj { get; } = new("siriraj-2018", "Carrying angle from birth to adolescence. Siriraj Med J 2018");

    public static Publication Balasubramanian { get; } = new("balasubramanian",
        "Balasubramanian P, Madhuri V, Muliyil J. J Pediatr Orthop B 2006;15:37-40, doi 10.1097/01202412-200601000-00008");

    public static Publication Kushwaha { get; } = new("kushwaha", "Kushwaha NS, Verma V, Singh A, et al. Cureus 2022");

    public static Publication Zampagni { get; } = new("zampagni",
        "Zampagni ML et al. J Shoulder Elbow Surg 2008;17:106-12, doi 10.1016/j.jse.2007.03.028");

    public static Publication Skaggs { get; } = new("skaggs", "Skaggs DL, Mirzayan R. J Bone Joint Surg Am 1999;81:1429-33");

    public static Publication SkaggsLetter { get; } = new("skaggs-letter", "Letter, J Bone Joint Surg Am 2001;83:1435");

    public static Publication Kappelhof { get; } = new("kappelhof",
        "Kappelhof B, Roorda BL, Poppelaars MA, et al. JBJS Reviews (meta-analysis of 10 studies)");

    public static Publication ODwyer { get; } = new("odwyer",
        "O'Dwyer H, O'Sullivan P, Fitzgerald D, et al. J Comput Assist Tomogr 2004;28(4):562-5");

    public static Publication Major { get; } = new("major", "Major NM, Crawford ST. AJR 2002;178(2):413-8");

    public static Publication Poppelaars { get; } = new("poppelaars",
        "Poppelaars MA et al. Children 2022;9(7):950, doi 10.3390/children9070950");

    public static Publication Murphy { get; } = new("murphy", "Murphy WA et al. Radiology 1977;124:659-65");

    public static Publication Cheng { get; } = new("cheng", "Cheng JC et al. J Pediatr Orthop 1998;18 (PubMed 9531396)");

    public static Publication Miyazaki { get; } = new("miyazaki",
        "Secondary ossification centres of the elbow. Acta Ortop Bras 2017;25(6):279-82");

    public static Publication Patel { get; } = new("patel", "Patel B et al. Pediatr Radiol 2009;39 (PubMed 19125245)");

    public static Publication Goodwin { get; } = new("goodwin",
        "Goodwin SJ, Irwin LJ, Irwin GJ. Scott Med J 2019;64(1):2-9, doi 10.1177/0036933018812000");

    public static Publication SubadultDatabase { get; } = new("subadult-database",
        "Computed from: Stull KE, Corron LK. Subadult Virtual Anthropology Database, doi 10.3390/forensicsci2010003");

    public static Publication NeckMorphometry { get; } = new("neck-2007",
        "Radial neck morphometry. Surg Radiol Anat 2007;29(4):279-84, doi 10.1007/s00276-007-0206-4");

    public static Publication VanRiet { get; } = new("van-riet",
        "Van Riet RP, Van Glabbeek F, Neale PG, et al. Clin Anat 2004;17(7):564-9");

    public static Publication Coonrad { get; } = new("coonrad",
        "Coonrad RW, Roush TF, Major NM, Basamania CJ. J Shoulder Elbow Surg 2005;14(3):312-7, doi 10.1016/j.jse.2004.09.002");

    public static Publication EssexLoprestiReview { get; } = new("essex-lopresti-review",
        "Systematic review of definitions of the Essex-Lopresti injury, PMC9619391");

    public static Publication TerribleTriad { get; } = new("terrible-triad",
        "Jones ADR, Jordan RW. Open Orthop J 2017;11:1394, doi 10.2174/1874325001711011394");

    public static Publication MonteggiaMissed { get; } = new("monteggia-missed",
        "Emerg Radiol 2020, doi 10.1007/s10140-020-01763-8");

    public static Publication MonteggiaDelay { get; } = new("monteggia-delay",
        "J Pediatr Orthop 2020;40(4):e293-9, doi 10.1097/BPO.0000000000001501");

    public static Publication Kissoon { get; } = new("kissoon",
        "Kissoon N, Galpin R, Gayle M, et al. J Pediatr Orthop 1995;15(4):449-53");

    public static Publication Valentini { get; } = new("valentini",
        "Benedetti Valentini M et al. Bone Joint J 2013;95-B(5), doi 10.1302/0301-620X.95B5.31042");

    public static Publication IncarceratedEpicondyle { get; } = new("incarcerated-epicondyle",
        "Incarcerated medial epicondyle fractures. J Pediatr Orthop");

    public static Publication Calogero { get; } = new("calogero",
        "Calogero V, Aulisa AG, Careri S, et al. J Clin Med 2024;13(1):167, doi 10.3390/jcm13010167");

    public static Publication LateralCondyleExit { get; } = new("lateral-condyle-1997",
        "J Orthop Trauma 1997;11:117 (PubMed 9057147)");

    public static Publication Transphyseal { get; } = new("transphyseal-2017", "ARC J Orthop 2017;2(1):24");

    public static Publication PaediatricReview { get; } = new("sajr", "Paediatric elbow review. S Afr J Radiol, article 881");

    public static Publication Klatt { get; } = new("klatt", "Klatt JB, Aoki SK. J Pediatr Orthop 2012;32(5):477-82");
#pragma warning restore CS1591
}
