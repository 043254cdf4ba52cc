//! Works out a job and writes its packet: the demo job into `target/packet`, or the job file and the folder given as arguments.
use core::ops::ControlFlow;
use seamwright::job::Job;
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let job = Job::from_json(&std::fs::read(std::env::args().nth(1).unwrap())?)?;
    {
        use seamwright::record::Calculation;
        let r = job.roof.compute()?;
        for l in r.lines() {
            println!(
                "{} plane {} x {} {} y {} {} beyond {:?}",
                l.name,
                r.planes()[l.side.plane].name(),
                l.side.start.x,
                l.side.end.x,
                l.side.start.y,
                l.side.end.y,
                l.other().map(|o| r.planes()[o.plane].name().to_owned())
            );
        }
        for p in r.planes() {
            println!("{} width {}", p.name(), p.outline().bounds().width()?);
        }
    }
    let t = std::time::Instant::now();
    let p = job.packet(&mut |_p| ControlFlow::Continue(()))?;
    println!("{:?} {:#?}", t.elapsed(), p.summary);
    for c in &p.cautions {
        println!("{c}");
    }
    Ok(())
}
