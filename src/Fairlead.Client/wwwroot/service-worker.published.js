self.addEventListener("fetch",()=>{});
